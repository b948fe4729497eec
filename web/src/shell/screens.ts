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

/** ms from the first screen to the others': by then what it asked the bench for is drawn. */
const SETTLED = 2000;

/**
 * Fetches the screens not opened yet, one at a time while the page has nothing else to do, so that each opens at once. One
 * that cannot be had is asked for again, and the failure said, when it is opened. Not where the reader saves data.
 */
export async function loadAhead(): Promise<void> {
  const { connection } = navigator as Navigator & { readonly connection?: { readonly saveData?: boolean } };
  if (connection?.saveData) return;
  await new Promise((resolve) => setTimeout(resolve, SETTLED));
  for (const load of Object.values(modules)) {
    await atRest();
    await load().catch(() => undefined);
  }
}

function atRest(): Promise<unknown> {
  return new Promise((resolve) => {
    // Not every browser can tell when it is idle.
    if ('requestIdleCallback' in globalThis) requestIdleCallback(resolve);
    else setTimeout(resolve, 200);
  });
}
