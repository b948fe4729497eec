/** Wavelengths as typed: any spacing, any order, in nm. */
import { GRID_END_NM, GRID_START_NM } from '../../colour/grid.ts';
import { ReadingRefused } from '../refusal.ts';

/** Readings that stop short of this are taken, with a word. */
const VISIBLE: readonly [number, number] = [400, 700];

/**
 * Sorts wavelengths ascending; `order[i]` is where the i-th of them stood.
 * @throws ReadingRefused `entry` when two are alike, they are not in nm, or they miss the visible range
 */
export function orderWavelengths(typed: readonly number[]): {
  wavelengths: number[];
  order: number[];
  assumed: string[];
} {
  const refuse = (sentence: string): never => {
    throw new ReadingRefused('entry', sentence);
  };
  if (typed.length < 2) refuse('A spectrum needs two wavelengths or more; for one band use bands.');
  const odd = typed.find((nm) => !(nm >= 200 && nm <= 2600));
  if (odd !== undefined) {
    refuse(`${odd} is no wavelength in nm (200 to 2600 is allowed); give nm: 0.55 micrometres is 550.`);
  }
  const order = typed.map((_, i) => i).toSorted((i, j) => typed[i]! - typed[j]!);
  const wavelengths = order.map((i) => typed[i]!);
  const twice = wavelengths.find((nm, i) => i > 0 && nm === wavelengths[i - 1]);
  if (twice !== undefined) refuse(`${twice} nm is there twice; leave one out.`);
  const [first, last] = [wavelengths[0]!, wavelengths.at(-1)!];
  if (last < GRID_START_NM || first > GRID_END_NM) {
    refuse(
      `The spectrum runs from ${first} to ${last} nm; some of ${GRID_START_NM}-${GRID_END_NM} nm is needed.`,
    );
  }
  const assumed: string[] = [];
  if (order.some((from, to) => from !== to))
    assumed.push('The wavelengths were not ascending; they were sorted with their values.');
  if (first > VISIBLE[0] || last < VISIBLE[1]) {
    assumed.push(
      `The spectrum stops at ${first} and ${last} nm; colours outside that range rest on its end values (400-700 nm is the usual least).`,
    );
  }
  return { wavelengths, order, assumed };
}
