/** L* under which a mixture counts as a dark, and from which as a light. This project's choice. */
export const DARK = 40;
export const LIGHT = 70;
