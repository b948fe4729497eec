import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { radiusOf } from '../lab-region.ts';
import { readingOf, responseRows } from '../observe/response-rows.ts';
import type { PaletteFit } from '../palette-fit.ts';
import { colourDoubt } from './colour-doubt.ts';
import { doubtOfMixture } from './doubt-space.ts';
import { informationOf } from './measurement.ts';
import { mixturesOfTube } from './mixtures-of-a-tube.ts';
import { possibleMeasurements } from './possible-measurements.ts';
import type { Advice, Fall } from './advice.ts';
import { DARK, LIGHT } from './lightness-range.ts';
import { adviceSentence } from './sentence.ts';
import { updateBy } from './update.ts';

/**
 * What to measure next of a tube, best first: for each possible measurement the expected fall of the 95 % radius over
 * mixtures that hold the tube, from the covariance alone (what will be read is not needed).
 * @throws RangeError for a tube that the palette does not have.
 */
export function adviseTube(fit: PaletteFit, set: SwatchSet, id: string): Advice[] {
  const { palette } = fit;
  const rows = responseRows(set.instrument);
  // Readings at the grid's own wavelengths need no sum over it.
  const at = rows.map((row) => row.indexOf(1));
  const read = (column: Float64Array): Float64Array =>
    at.every((i) => i >= 0) ? Float64Array.from(at, (i) => column[i]!) : readingOf(rows, column);
  const noise = { sigma: fit.noise.sigma ?? 0, relative: fit.noise.relative ?? 0 };
  const mixtures = mixturesOfTube(palette, id).map((masses) => colourDoubt(palette, masses));
  return possibleMeasurements(fit, set, id)
    .map((measurement): Advice => {
      const doubt = doubtOfMixture(palette, measurement.masses);
      const information = informationOf(measurement, doubt, rows, noise, fit.weighing);
      const update = updateBy(doubt, read, information, rows.length);
      const falls = mixtures.map(({ lab, slopes, covariance, radius }) => {
        const C = covariance.map((row) => [...row]);
        update.lessen(C, slopes);
        return { L: lab.L, before: radius, after: radiusOf(lab, C) };
      });
      const part = (from: number, to: number): Fall | undefined => meanFall(falls, from, to);
      const all = part(-Infinity, Infinity)!;
      const [darks, middles, lights] = [part(-Infinity, DARK), part(DARK, LIGHT), part(LIGHT, Infinity)];
      const advice = {
        measurement,
        all,
        ...(darks ? { darks } : {}),
        ...(middles ? { middles } : {}),
        ...(lights ? { lights } : {}),
        gain: all.before - all.after,
      };
      return { ...advice, sentence: adviceSentence(advice, id, palette) };
    })
    .toSorted((a, b) => b.gain - a.gain);
}

function meanFall(
  falls: readonly { L: number; before: number; after: number }[],
  from: number,
  to: number,
): Fall | undefined {
  const inside = falls.filter(({ L }) => L >= from && L < to);
  if (inside.length === 0) return undefined;
  const mean = (of: 'before' | 'after'): number => inside.reduce((a, f) => a + f[of], 0) / inside.length;
  return { before: mean('before'), after: mean('after') };
}
