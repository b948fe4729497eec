import type { z } from 'zod';
import { GRID_NM } from '../../src/colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName, whiteParts } from '../../src/colour/illuminant.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { lean } from '../../src/colour/lean.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import type { Wanted } from '../../src/mix/match/wanted.ts';
import type { Pour } from '../../src/mix/pour/pour-recipe.ts';
import type { PreTint } from '../../src/mix/pour/pre-tint.ts';
import type { Scale } from '../../src/mix/pour/scale.ts';
import type { MixPrediction } from '../../src/mix/predict-mix.ts';
import type {
  pourSchema,
  PredictionAnswer,
  preTintSchema,
  scaleSchema,
  underLightSchema,
  WantedRequest,
} from '../api/mix-words.ts';
import { LIGHTS } from '../api/mix.ts';
import type { whiteSchema } from '../api/words.ts';
import { defined } from '../defined.ts';
import { colourOfReflectance } from '../views/colour-view.ts';

/** The viewing white a request named, or the usual one. */
export function whiteNameOf(white: z.infer<typeof whiteSchema> | undefined): WhiteName {
  return white ? `${white.illuminant}/${white.observer}` : DEFAULT_WHITE;
}

/** A wanted colour of a request as the mixing room takes it. */
export function wantedOf(target: WantedRequest, white: WhiteName): Wanted {
  return 'Lab' in target ? { lab: { ...target.Lab, white } } : { spectrum: target.reflectance };
}

/** A scale of a request as an option of the mixing room. */
export function scaleOf(scale: z.infer<typeof scaleSchema> | undefined): { readonly scale?: Scale } {
  if (!scale) return {};
  const { resolution, smallestPour } = scale;
  return { scale: { resolution, ...defined({ smallestPour }) } };
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

/** A reflectance under each of the lights a painter meets, the observer kept. */
export function lightsOf(
  reflectance: ArrayLike<number>,
  white: WhiteName,
): z.infer<typeof underLightSchema>[] {
  const { observer } = whiteParts(white);
  return LIGHTS.map((illuminant) => {
    const lab = labOfReflectance(reflectance, tristimulusWeights(`${illuminant}/${observer}`));
    return { illuminant, Lab: { L: lab.L, a: lab.a, b: lab.b }, lean: lean(lab) };
  });
}

export const preTintView = (tint: PreTint): z.infer<typeof preTintSchema> => ({
  ...tint,
  make: { ...tint.make },
});

/** A pour as answers state it. */
export function pourView(pour: Pour): z.infer<typeof pourSchema> {
  const { preTint } = pour;
  return {
    masses: { ...pour.masses },
    grams: pour.grams,
    deltaE00: pour.deltaE00,
    roundedDeltaE00: pour.roundedDeltaE00,
    leftOut: [...pour.leftOut],
    order: pour.order.map((step) => ({ ...step })),
    preTint: preTint
      ? {
          tints: preTint.tints.map(preTintView),
          masses: { ...preTint.masses },
          deltaE00: preTint.deltaE00,
        }
      : null,
    noPreTint: [...pour.noPreTint],
  };
}
