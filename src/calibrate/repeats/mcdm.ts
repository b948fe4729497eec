/**
 * MCDM, the mean colour difference from the mean: ASTM E2214, "Specifying and Verifying the Performance of
 * Color-Measuring Instruments" (the term is E2214's; E2729, sometimes cited for it, is about bandpass). The mean
 * colour is the mean of L*, a* and b*.
 */
import { ciede2000 } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import type { WhiteName } from '../../colour/illuminant.ts';
import { say } from './sentences.ts';

/** The mean of colours under one white. @throws RangeError for an empty list or mixed whites */
export function meanLab<W extends WhiteName>(labs: readonly Lab<W>[]): Lab<W> {
  const first = labs[0];
  if (!first) throw new RangeError(say('mean-of-none'));
  if (labs.some((lab) => lab.white !== first.white)) {
    throw new RangeError(say('mean-of-whites'));
  }
  const mean = (key: 'L' | 'a' | 'b'): number => labs.reduce((sum, lab) => sum + lab[key], 0) / labs.length;
  return { L: mean('L'), a: mean('a'), b: mean('b'), white: first.white };
}

/** Mean distance of the readings from their mean; 0 for a single reading. CIEDE2000 unless dE*ab is asked for. */
export function mcdm(labs: readonly Lab[], formula: 'dE00' | 'dE*ab' = 'dE00'): number {
  const mean = meanLab(labs);
  const distance = (lab: Lab): number =>
    formula === 'dE00' ? ciede2000(lab, mean) : Math.hypot(lab.L - mean.L, lab.a - mean.a, lab.b - mean.b);
  return labs.reduce((sum, lab) => sum + distance(lab), 0) / labs.length;
}
