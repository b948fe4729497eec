import type { z } from 'zod';
import type { WhiteName } from '../../src/colour/illuminant.ts';
import { predictMix } from '../../src/mix/predict-mix.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { predictAnswerSchema } from '../api/mix.ts';
import { lightsOf, predictionView } from './views.ts';

/** Warnings of the fit about the tubes of a mix. */
export function warningsOf(profile: PaletteProfile, masses: Readonly<Record<string, number>>): string[] {
  const used = profile.tubes.filter((tube) => (masses[tube.id] ?? 0) > 0);
  return used.flatMap((tube) => (tube.evidence?.warnings ?? []).map((w) => `${tube.label}: ${w}`));
}

/** @throws RangeError for an unknown tube, a bad mass or no paint at all */
export function predictFrom(
  profile: PaletteProfile,
  masses: Readonly<Record<string, number>>,
  white: WhiteName,
): z.infer<typeof predictAnswerSchema> {
  const prediction = predictMix(paletteOf(profile), masses, white);
  return {
    ...predictionView(prediction, warningsOf(profile, masses)),
    lights: lightsOf(prediction.reflectance, white),
  };
}
