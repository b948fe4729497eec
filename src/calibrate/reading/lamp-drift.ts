/**
 * A sensor that needs two passes for its bands reads its clear channel in both: the ratio of the two is a check of
 * the lamp inside one reading. The usual ratio is the median of the whites so far.
 */
import { median } from '../repeats/robust.ts';
import { LAMP_DRIFT_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';

/** Usual ratio of clear (first pass) to clear (second pass), from at least three whites. */
export function usualClearRatio(pairs: readonly (readonly [number, number])[]): number {
  if (pairs.length < 3) {
    throw new ReadingRefused(
      'too-few',
      `The usual clear ratio needs three whites; there are ${pairs.length}.`,
    );
  }
  return median(pairs.map(([one, two]) => one / two));
}

/** @throws ReadingRefused `lamp-drift` when the lamp moved by more than 0.3 % within the frame */
export function holdLampSteady(clearFirst: number, clearSecond: number, usual: number): void {
  const change = clearFirst / clearSecond / usual - 1;
  if (Math.abs(change) <= LAMP_DRIFT_LIMIT) return;
  throw new ReadingRefused(
    'lamp-drift',
    `The lamp moved by ${perCent(change)} within this reading, and ${perCent(LAMP_DRIFT_LIMIT)} is allowed; let it ` +
      'warm up, keep the head still, and read again.',
  );
}
