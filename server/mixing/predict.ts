import type { z } from 'zod';
import { GRID_NM } from '../../src/colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../../src/colour/illuminant.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { type MixPrediction, predictMix } from '../../src/mix/predict-mix.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { PredictionAnswer } from '../api/mix.ts';
import type { whiteSchema } from '../api/words.ts';
import { colourOfReflectance } from '../views/colour-view.ts';

/** The viewing white a request named, or the usual one. */
export function whiteNameOf(white: z.infer<typeof whiteSchema> | undefined): WhiteName {
  return white ? `${white.illuminant}/${white.observer}` : DEFAULT_WHITE;
}

/** A recipe's colour with its interval, as commands and requests state it. */
export function predictionView(
  prediction: MixPrediction,
  warnings: readonly string[] = [],
): PredictionAnswer {
  const { interval, reflectance } = prediction;
  return {
    wavelengths: [...GRID_NM],
    reflectance: {
      value: [...reflectance],
      low: Array.from(interval.reflectance.low, (v) => Math.max(0, v)),
      high: [...interval.reflectance.high],
    },
    colour: colourOfReflectance(reflectance, 'prediction', prediction.lab.white),
    interval: {
      radius95: interval.radius95,
      valueLow: interval.value[0],
      valueHigh: interval.value[1],
      leanLow: interval.lean[0],
      leanHigh: interval.lean[1],
    },
    warnings: [...warnings],
  };
}

/** @throws RangeError for an unknown tube, a bad mass or no paint at all */
export function predictFrom(
  profile: PaletteProfile,
  masses: Readonly<Record<string, number>>,
  white: WhiteName,
): PredictionAnswer {
  const palette: MixingPalette = paletteOf(profile);
  const used = profile.tubes.filter((tube) => (masses[tube.id] ?? 0) > 0);
  const warnings = used.flatMap((tube) => (tube.evidence?.warnings ?? []).map((w) => `${tube.label}: ${w}`));
  return predictionView(predictMix(palette, masses, white), warnings);
}
