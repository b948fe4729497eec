/** Telling per cent from 0 to 1 without guessing: certain, asked, or refused. */
import { HIGHEST_REFLECTANCE, LOWEST_REFLECTANCE } from '../limits.ts';
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

export type ScaleAnswer =
  { readonly factor: number; readonly assumed?: string } | { readonly question: string };

/** One way of writing numbers: its name in words, and what a number is multiplied by to become a fraction. */
export interface Scale {
  readonly words: string;
  readonly factor: number;
}

/**
 * Which of two scales values are on. `fine` is the one with small numbers (0 to 1), `coarse` the other (per cent).
 * `values` are compared with what the fine scale allows at most, `highest`.
 */
export function tellScale(
  values: readonly number[],
  stated: 'fine' | 'coarse' | undefined,
  fine: Scale,
  coarse: Scale,
  highest = HIGHEST_REFLECTANCE,
): ScaleAnswer {
  const most = Math.max(...values);
  if (stated === 'fine') return { factor: fine.factor };
  if (stated === 'coarse') {
    if (most > highest || most <= 0) return { factor: coarse.factor };
    return {
      factor: coarse.factor,
      assumed: say('scale-named', { most, coarse: coarse.words, fine: fine.words }),
    };
  }
  if (most > highest) {
    return {
      factor: coarse.factor,
      assumed: say('scale-taken', { coarse: coarse.words, most, fine: fine.words }),
    };
  }
  return {
    question: say('scale-question', { most, fine: fine.words, coarse: coarse.words }),
  };
}

/** @throws ReadingRefused `entry` for a reflectance no paint has, naming the place */
export function holdReflectance(
  values: readonly number[],
  places: readonly string[],
  typed: readonly number[],
): void {
  values.forEach((v, i) => {
    if (v >= LOWEST_REFLECTANCE && v <= HIGHEST_REFLECTANCE) return;
    throw new ReadingRefused(
      'entry',
      say('reflectance', {
        typed: typed[i]!,
        place: places[i]!,
        factor: Number(v.toPrecision(4)),
        lowest: LOWEST_REFLECTANCE,
        highest: HIGHEST_REFLECTANCE,
      }),
      [places[i]!],
    );
  });
}
