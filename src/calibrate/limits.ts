/**
 * How much is too much. Each is a share (0.005 is 0.5 %). None comes from a standard: they are design limits for a
 * self-built head of this class (common practice, no source), kept in one place so that they can be argued with.
 */

/** White before and after a block of readings may differ by this. */
export const WHITE_BRACKET_LIMIT = 0.005;
/** A block of readings is closed by a white after so many, ... */
export const READINGS_PER_WHITE = 10;
/** ... after so long, ms, ... */
export const WHITE_AGE_LIMIT_MS = 10 * 60_000;
/** ... or when the head is so much warmer or colder, K. */
export const WHITE_KELVIN_LIMIT = 2;
/** Dark on the sample above dark on the black trap, as a share of the white: room light gets in. */
export const LIGHT_LEAK_LIMIT = 0.002;
/** Whites in a row that must be steady, and by how much in all. */
export const SETTLING_WHITES = 10;
export const SETTLING_LIMIT = 0.001;
/** ... over so long at least, ms: a quick series sees too little of a slow drift. */
export const SETTLING_SPAN_MS = 20_000;
/** Basic counts at different apertures. */
export const APERTURE_LINEARITY_LIMIT = 0.005;
/** Two lamps apart against both together. */
export const SUPERPOSITION_LIMIT = 0.003;
/** A measured gain step from the nominal one, beyond which something is wrong rather than merely nominal. */
export const GAIN_STEP_LIMIT = 0.1;
/** Change of a reading for 0.1 mm of lift. */
export const LIFT_LIMIT_PER_TENTH_MM = 0.005;
/** White minus trap below this share of full scale is too dim to divide by. */
export const LOW_SIGNAL_LIMIT = 0.01;
/** A reflectance factor outside these is no paint on a well set head: the white, the trap or the place is wrong. */
export const LOWEST_REFLECTANCE = -0.02;
export const HIGHEST_REFLECTANCE = 1.2;
