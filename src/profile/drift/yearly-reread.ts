/**
 * Does the palette still hold? The same three swatches (say the white, one tint, one dark) are read again after a
 * year and compared with their first readings, within what the instrument's own scatter allows.
 */
import { ciede2000 } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { say } from '../sentences.ts';

export interface RereadSwatch {
  readonly id: string;
  readonly role: 'white' | 'tint' | 'masstone';
  readonly first: Lab;
  readonly again: Lab;
  /** Mean colour difference of the repeats from their mean (CIEDE2000), the larger of the two readings. */
  readonly mcdm: number;
}

export type DriftVerdict = 'holds' | 'watch' | 'measure again';

export interface DriftReport {
  readonly verdict: DriftVerdict;
  readonly swatches: readonly {
    readonly id: string;
    readonly deltaE00: number;
    readonly beyondScatter: boolean;
  }[];
  /** One to three plain sentences: what moved, what it points to, what to do. */
  readonly words: readonly string[];
}

/** Differences below this (CIEDE2000) are not seen side by side. Common practice, no source. */
const JUST_VISIBLE = 1;
/** A re-read differs from scatter alone by more than this many mean differences rarely; common practice, no source. */
const SCATTER_FACTOR = 3;

/** @throws RangeError with fewer than three swatches: one or two cannot tell the instrument from the paint. */
export function yearlyReread(swatches: readonly RereadSwatch[]): DriftReport {
  if (swatches.length < 3) {
    throw new RangeError(
      say('too-few-reread', { count: swatches.length, were: swatches.length === 1 ? ' was' : 'es were' }),
    );
  }
  const rows = swatches.map((s) => {
    const deltaE00 = ciede2000(s.first, s.again);
    return { id: s.id, deltaE00, beyondScatter: deltaE00 > Math.max(SCATTER_FACTOR * s.mcdm, 0.3) };
  });
  const moved = rows.filter((r) => r.beyondScatter);
  const worst = Math.max(...rows.map((r) => r.deltaE00));
  const verdict: DriftVerdict =
    moved.length === 0 ? 'holds' : worst < JUST_VISIBLE ? 'watch' : 'measure again';
  return { verdict, swatches: rows, words: wordsFor(verdict, swatches, moved.length, worst) };
}

function wordsFor(
  verdict: DriftVerdict,
  swatches: readonly RereadSwatch[],
  moved: number,
  worst: number,
): string[] {
  if (verdict === 'holds') return [say('holds')];
  const words = [say('moved', { some: moved, of: swatches.length, most: worst.toFixed(1) })];
  const shifts = swatches.map((s) => s.again.L - s.first.L);
  const sameWay = shifts.every((d) => d > 0.3) || shifts.every((d) => d < -0.3);
  const yellowed = swatches.filter((s) => s.role !== 'masstone' && s.again.b - s.first.b > 0.5);
  if (sameWay) {
    words.push(say('same-way'));
  } else if (yellowed.length > 0 && swatches.every((s) => s.role === 'masstone' || s.again.b >= s.first.b)) {
    words.push(say('yellowed'));
  }
  words.push(verdict === 'watch' ? say('not-seen') : say('read-again'));
  return words;
}
