/**
 * What a channel really sees is filter times lamp (times detector), not the catalogue's band. From those curves: the
 * row of the observation matrix A (a reading is row times reflectance, on the program's grid) and the effective
 * centre and width, so that a fit sees through the right window.
 */
import { GRID_NM } from '../../colour/grid.ts';
import { interpolationRows } from '../../colour/interpolation.ts';
import { ReadingRefused } from '../refusal.ts';
import { say } from '../reading/sentences.ts';

/** A curve sampled at ascending wavelengths, nm; any scale, not negative. */
export interface SampledCurve {
  readonly wavelengths: readonly number[];
  readonly values: ArrayLike<number>;
}

/** A channel as a table, or as its catalogue centre and width (a bell). */
export type ChannelFilter =
  | ({ readonly name: string } & SampledCurve)
  | { readonly name: string; readonly centreNm: number; readonly fwhmNm: number };

export interface EffectiveBand {
  readonly name: string;
  /** 36 weights on the 380-730 nm grid, sum 1. */
  readonly row: Float64Array;
  /** Centroid of filter times lamp, nm. */
  readonly centreNm: number;
  /** Full width at half maximum of a bell with the same standard deviation, nm. */
  readonly fwhmNm: number;
  /** Signal on a perfect diffuser as a share of the strongest channel's. */
  readonly strength: number;
}

const FINE_NM = Array.from({ length: 1 + (830 - 300) * 2 }, (_, i) => 300 + i / 2);
const FWHM_PER_SD = 2 * Math.sqrt(2 * Math.log(2));

function sampled(curve: SampledCurve, nm: readonly number[]): Float64Array {
  const { wavelengths, values } = curve;
  if (wavelengths.length !== values.length) {
    throw new ReadingRefused(
      'channels-differ',
      say('response-values', { wavelengths: wavelengths.length, values: values.length }),
    );
  }
  const rows = interpolationRows(wavelengths, nm);
  const [first, last] = [wavelengths[0]!, wavelengths.at(-1)!];
  return Float64Array.from(rows, (row, i) =>
    nm[i]! < first || nm[i]! > last ? 0 : row.reduce((sum, w, k) => sum + (w && w * values[k]!), 0),
  );
}

/**
 * Effective bands of a head. `lamp` is the lamp's spectral power; left out, the filters are taken as they are (a
 * response table a head reports already holds its lamp).
 * @throws ReadingRefused `low-signal` for a channel that sees nothing, `not-a-number` for a negative or odd response
 */
export function effectiveBands(filters: readonly ChannelFilter[], lamp?: SampledCurve): EffectiveBand[] {
  const power = lamp ? sampled(lamp, FINE_NM) : undefined;
  const hats = interpolationRows(GRID_NM, FINE_NM);
  const bands = filters.map((filter) => {
    const base =
      'wavelengths' in filter
        ? sampled(filter, FINE_NM)
        : Float64Array.from(FINE_NM, (nm) =>
            Math.exp(-4 * Math.LN2 * ((nm - filter.centreNm) / filter.fwhmNm) ** 2),
          );
    const seen = power ? base.map((v, i) => v * power[i]!) : base;
    if (seen.some((v) => !(v >= 0))) {
      throw new ReadingRefused('not-a-number', say('response-negative', { filter: filter.name }), [
        filter.name,
      ]);
    }
    const total = seen.reduce((sum, v) => sum + v, 0);
    if (!(total > 0)) {
      throw new ReadingRefused('low-signal', say('response-blind', { filter: filter.name }), [filter.name]);
    }
    const moment = (f: (nm: number) => number): number =>
      seen.reduce((sum, v, i) => sum + v * f(FINE_NM[i]!), 0) / total;
    const centreNm = moment((nm) => nm);
    const row = new Float64Array(GRID_NM.length);
    seen.forEach((v, i) => hats[i]!.forEach((h, g) => h && (row[g]! += (h * v) / total)));
    return {
      name: filter.name,
      row,
      centreNm,
      fwhmNm: FWHM_PER_SD * Math.sqrt(moment((nm) => (nm - centreNm) ** 2)),
      total,
    };
  });
  const strongest = Math.max(...bands.map((b) => b.total));
  return bands.map(({ total, ...band }) => ({ ...band, strength: total / strongest }));
}

/** The bands as a swatch set's `instrument.response`. */
export function responseOf(bands: readonly EffectiveBand[]): { wavelengths: number[]; rows: number[][] } {
  return { wavelengths: [...GRID_NM], rows: bands.map((b) => Array.from(b.row)) };
}

/** A response as a head reports it, at even steps from `startNm`. */
export function curveOfSteps(steps: {
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}): SampledCurve {
  return { wavelengths: steps.values.map((_, i) => steps.startNm + i * steps.stepNm), values: steps.values };
}
