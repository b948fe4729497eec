import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { labJacobian, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { radiusOf } from '../lab-region.ts';
import { choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import { readingOf, responseRows } from '../observe/response-rows.ts';
import type { PaletteFit } from '../palette-fit.ts';
import { type DoubtOfMixture, columnsFor, doubtOfMixture } from './doubt-space.ts';
import { informationOf } from './measurement.ts';
import { mixturesOfTube } from './mixtures-of-a-tube.ts';
import { possibleMeasurements } from './possible-measurements.ts';
import type { Advice, Fall } from './advice.ts';
import { adviceSentence } from './sentence.ts';

const DARK = 40;
const LIGHT = 70;

/**
 * What to measure next of a tube, best first: for each possible measurement the expected fall of the 95 % radius over
 * mixtures that hold the tube, from the covariance alone (what will be read is not needed).
 * @throws RangeError for a tube that the palette does not have.
 */
export function adviseTube(fit: PaletteFit, set: SwatchSet, id: string): Advice[] {
  const { palette } = fit;
  const rows = responseRows(set.instrument);
  const noise = { sigma: fit.noise.sigma ?? 0, relative: fit.noise.relative ?? 0 };
  const mixtures = mixturesOfTube(palette, id).map((masses) => colourDoubt(doubtOfMixture(palette, masses)));
  return possibleMeasurements(fit, set, id)
    .map((measurement): Advice => {
      const tubes = Object.keys(measurement.masses);
      const doubt = doubtOfMixture(palette, measurement.masses);
      const G = columnsFor(palette, doubt, tubes).map((c) => readingOf(rows, c));
      const information = informationOf(measurement, doubt, rows, noise, fit.weighing);
      const L = updated(G, information, rows.length);
      const falls = mixtures.map((m) => {
        const now = radiusOf(m.lab, m.covariance([], undefined, G.length, palette));
        return { L: m.lab.L, before: now, after: radiusOf(m.lab, m.covariance(tubes, L, G.length, palette)) };
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
      return { ...advice, sentence: adviceSentence(advice, id, palette.white) };
    })
    .toSorted((a, b) => b.gain - a.gain);
}

/** Cholesky factor of I + G^T W G, G given by columns. */
function updated(G: readonly Float64Array[], W: Float64Array, channels: number): Float64Array {
  const n = G.length;
  const WG = G.map((g) => {
    const out = new Float64Array(channels);
    for (let i = 0; i < channels; i++) {
      for (let j = 0; j < channels; j++) out[i]! += W[i * channels + j]! * g[j]!;
    }
    return out;
  });
  const P = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    P[a * n + a] = 1;
    for (let b = 0; b <= a; b++) {
      for (let i = 0; i < channels; i++) P[a * n + b]! += G[a]![i]! * WG[b]![i]!;
    }
  }
  choleskyInPlace(P, n);
  return P;
}

type Palette = PaletteFit['palette'];

/** A mixture's colour, and its covariance in Lab after an update of z for some tubes. */
function colourDoubt(doubt: DoubtOfMixture): {
  lab: ReturnType<typeof labOfReflectance>;
  covariance(tubes: readonly string[], L: Float64Array | undefined, n: number, palette: Palette): number[][];
} {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const J = labJacobian(doubt.measured, weights);
  const inLab = (column: Float64Array): number[] =>
    J.map((row) => row.reduce((sum, d, i) => sum + d * column[i]!, 0));
  const shared = doubt.shared.map(inLab);
  const own = new Map([...doubt.own].map(([id, columns]) => [id, columns.map(inLab)]));
  const afresh = doubt.afresh.map(inLab);
  return {
    lab: labOfReflectance(doubt.measured, weights),
    covariance: (tubes, L, n, palette) => {
      const C = [0, 1, 2].map(() => [0, 0, 0]);
      const add = (g: ArrayLike<number>, from = 0, times = 1): void => {
        for (let r = 0; r < 3; r++)
          for (let c = 0; c < 3; c++) C[r]![c]! += times * g[from + r]! * g[from + c]!;
      };
      afresh.forEach((g) => add(g));
      for (const [id, columns] of own) if (!tubes.includes(id)) columns.forEach((g) => add(g));
      if (!L) {
        shared.forEach((g) => add(g));
        return C;
      }
      const none = [0, 0, 0];
      const part = (keep: readonly string[], sign: number): void => {
        const z = [
          ...shared,
          ...tubes.flatMap(
            (id) =>
              (keep.includes(id) ? own.get(id) : undefined) ??
              palette.tubes.find((t) => t.id === id)!.own.map(() => none),
          ),
        ];
        const Y = Float64Array.from(z.flat());
        forwardInPlace(L, n, Y, 3);
        for (let k = 0; k < n; k++) add(Y, 3 * k, sign);
      };
      // A palette carries no covariance between two tubes' own doubts, so none is counted: what shows is what is kept.
      for (const id of tubes) part([id], 1);
      if (tubes.length > 1) part([], 1 - tubes.length);
      return C;
    },
  };
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
