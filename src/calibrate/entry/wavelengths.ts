/** Wavelengths as typed: any spacing, any order, in nm. */
import { GRID_END_NM, GRID_START_NM } from '../../colour/grid.ts';
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

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
  if (typed.length < 2) refuse(say('two-wavelengths'));
  const odd = typed.find((nm) => !(nm >= 200 && nm <= 2600));
  if (odd !== undefined) {
    refuse(say('no-wavelength', { nm: odd }));
  }
  const order = typed.map((_, i) => i).toSorted((i, j) => typed[i]! - typed[j]!);
  const wavelengths = order.map((i) => typed[i]!);
  const twice = wavelengths.find((nm, i) => i > 0 && nm === wavelengths[i - 1]);
  if (twice !== undefined) refuse(say('wavelength-twice', { nm: twice }));
  const [first, last] = [wavelengths[0]!, wavelengths.at(-1)!];
  if (last < GRID_START_NM || first > GRID_END_NM) {
    refuse(say('spectrum-range', { first, last, from: GRID_START_NM, to: GRID_END_NM }));
  }
  const assumed: string[] = [];
  if (order.some((from, to) => from !== to)) assumed.push(say('sorted'));
  if (first > VISIBLE[0] || last < VISIBLE[1]) {
    assumed.push(say('spectrum-ends', { first, last }));
  }
  return { wavelengths, order, assumed };
}
