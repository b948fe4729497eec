/**
 * A block of readings lies between two whites; the white at the time of a reading is interpolated linearly between
 * them. Times are ms on any one clock, handed in.
 */
import { perCent } from '../per-cent.ts';
import {
  READINGS_PER_WHITE,
  WHITE_AGE_LIMIT_MS,
  WHITE_BRACKET_LIMIT,
  WHITE_KELVIN_LIMIT,
} from '../limits.ts';
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

/** A white tile as read: dark-subtracted basic counts per channel. */
export interface WhiteReading {
  readonly signal: Float64Array;
  readonly atMs: number;
  readonly kelvin?: number;
}

/** Largest relative change of any channel from one white to the next, with its channel's index. */
export function whiteChange(before: WhiteReading, after: WhiteReading): { change: number; channel: number } {
  let worst = { change: 0, channel: 0 };
  before.signal.forEach((b, i) => {
    const seen = after.signal[i]! / b - 1;
    // What is no number is the worst there can be, not the least.
    const change = Number.isFinite(seen) ? seen : Number.NEGATIVE_INFINITY;
    if (Math.abs(change) > Math.abs(worst.change)) worst = { change, channel: i };
  });
  return worst;
}

/**
 * Takes or refuses the white that closes a block.
 * @throws ReadingRefused `white-drift` when any channel changed by more than 0.5 %; `white-order`
 */
export function closeBracket(before: WhiteReading, after: WhiteReading, channels: readonly string[]): void {
  if (!(after.atMs >= before.atMs)) {
    throw new ReadingRefused('white-order', say('white-order'));
  }
  const { change, channel } = whiteChange(before, after);
  if (!(Math.abs(change) <= WHITE_BRACKET_LIMIT)) {
    const name = channels[channel] ?? say('channel', { number: channel + 1 });
    throw new ReadingRefused(
      'white-drift',
      say(change < 0 ? 'white-fell' : 'white-rose', {
        by: perCent(change),
        channel: name,
        allowed: perCent(WHITE_BRACKET_LIMIT),
      }),
      [name],
    );
  }
}

/** The white at a time: interpolated between two, or the last one while the block is still open. */
export function whiteAt(before: WhiteReading, after: WhiteReading | undefined, atMs: number): Float64Array {
  if (!after || after.atMs <= before.atMs) return before.signal;
  const t = Math.min(1, Math.max(0, (atMs - before.atMs) / (after.atMs - before.atMs)));
  return before.signal.map((b, i) => b + t * (after.signal[i]! - b));
}

/** Where a block stands. */
export interface BlockState {
  readonly readingsSinceWhite: number;
  readonly whiteAgeMs: number;
  /** Change of the head's temperature since the white, K, where it knows. */
  readonly kelvinChange?: number;
}

/** Why a new white is due, in one sentence; `undefined` while it is not. */
export function whiteDue(state: BlockState): string | undefined {
  if (state.readingsSinceWhite >= READINGS_PER_WHITE) {
    return say('white-due-count', { count: state.readingsSinceWhite });
  }
  if (state.whiteAgeMs >= WHITE_AGE_LIMIT_MS) {
    return say('white-due-age', { minutes: Math.round(state.whiteAgeMs / 60_000) });
  }
  const change = state.kelvinChange ?? 0;
  if (Math.abs(change) >= WHITE_KELVIN_LIMIT) {
    return say('white-due-warmth', {
      by: Math.abs(change).toFixed(1),
      way: change > 0 ? 'warmer' : 'colder',
    });
  }
  return undefined;
}
