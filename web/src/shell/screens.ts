/**
 * The places of the program. A screen is web/src/screens/<name>/<name>-screen.ts and defines <tl-NAME-screen> with a
 * `route` property; it is loaded when it is first opened.
 */
export const ACTS = [
  { act: 'measure', screens: ['rack', 'bench', 'ladder'] },
  { act: 'trust', screens: ['constants', 'checks', 'profile'] },
  { act: 'paint', screens: ['mixing', 'limits', 'study'] },
] as const;
export type ScreenName = (typeof ACTS)[number]['screens'][number];
/** What stands in the bar under the thumb on a phone; the rest is behind "All". */
export const THUMB: readonly ScreenName[] = ['rack', 'ladder', 'mixing'];

const modules = import.meta.glob<unknown>('../screens/*/*-screen.ts');

export function isScreen(name: string): boolean {
  if (name === 'parts') return import.meta.env.DEV || import.meta.env.MODE === 'parts';
  return ACTS.some((a) => (a.screens as readonly string[]).includes(name));
}

/** Loads a screen's code. @throws Error when it is not among the built pages. */
export async function loadScreen(name: string): Promise<void> {
  const load = modules[`../screens/${name}/${name}-screen.ts`];
  if (!load) throw new Error(`No screen ${name} was built.`);
  await load();
}
