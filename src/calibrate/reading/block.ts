/**
 * A block of readings between two whites, worked out again when the closing white is in: each reading against the
 * white interpolated to its own time. Readings taken while the block was open stand on the opening white alone until
 * then.
 */
import { type TwoPointScale, reflectanceFromSignal } from './reflectance.ts';
import { type WhiteReading, closeBracket, whiteAt } from './white-bracket.ts';

/** One reading of the block: dark-subtracted basic counts per channel. */
export interface BlockReading {
  readonly signal: Float64Array;
  readonly atMs: number;
}

/**
 * Reflectance factors of a closed block, in the order of the readings.
 * @throws ReadingRefused `white-drift` when the whites differ by more than 0.5 %: the whole block is to be read again;
 *   or any of `reflectanceFromSignal`'s
 */
export function closeBlock(
  before: WhiteReading,
  readings: readonly BlockReading[],
  after: WhiteReading,
  scale: Omit<TwoPointScale, 'white'>,
  channels: readonly string[],
): Float64Array[] {
  closeBracket(before, after, channels);
  return readings.map(({ signal, atMs }) =>
    reflectanceFromSignal(signal, { ...scale, white: whiteAt(before, after, atMs) }, channels),
  );
}
