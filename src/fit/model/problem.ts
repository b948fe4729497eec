import { type Piles, pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import type { Swatch, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { GRID_SIZE, type Spectrum } from '../../colour/grid.ts';
import { type Surface, topSlopeByK2, transportSurfaceFor } from '../optics/surface.ts';
import { cardEstimator } from '../observe/card.ts';
import { type NoiseModel, clipsAtZero, meanVariance, readingNoise } from '../observe/reading-noise.ts';
import { responseRows } from '../observe/response-rows.ts';
import { type Layout, type SharedUnknown, layoutOf } from './layout.ts';
import { lnDensityRatio } from './paint-density.ts';
import type { FitSettings } from './settings.ts';

/** One swatch as the fit sees it: the mean of its readings and how sure that mean is. */
export interface ObservedSwatch {
  readonly swatch: Swatch;
  readonly mean: Float64Array;
  readonly variance: Float64Array;
  readonly repeats: number;
  /** Index of its film among the finite ones, -1 for an opaque one. */
  readonly film: number;
  /** The bare card as the geometry reads it, on the grid. */
  readonly card: Spectrum | undefined;
}

/** Swatches painted from one pile: they share its weighing errors and what the equations miss about it. */
export interface Group {
  readonly pile: number;
  readonly tubes: readonly number[];
  readonly swatches: readonly ObservedSwatch[];
}

/** One film of finite thickness. */
export interface ObservedFilm {
  readonly id: string;
  /** um, or null. */
  readonly thickness: number | null;
  /** ln of its density over the white's: how much more paint an even film of it holds. */
  readonly lnDensity: number;
}

/** All that a fit is given, laid out. */
export interface FitProblem {
  readonly set: SwatchSet;
  readonly settings: FitSettings;
  readonly piles: Piles;
  readonly white: number;
  readonly rows: readonly Float64Array[];
  /** rows as one array, channel by channel. */
  readonly A: Float64Array;
  readonly channels: number;
  /** Grid wavelength of each channel, where every channel is just one. */
  readonly channelAt: Int32Array | undefined;
  readonly groups: readonly Group[];
  readonly layout: Layout;
  /** Theory's surface: where the fit starts and what its prior is about. */
  readonly surface: Surface;
  /** How a perfect white's reading moves with k2. */
  readonly topSlope: number;
  readonly noise: NoiseModel;
  readonly clipped: boolean;
  readonly films: readonly ObservedFilm[];
  /** How much rougher each tube's ln K is taken to be than the settings say; the solver sizes it from the readings. */
  readonly roughness: Float64Array;
}

export interface ProblemOptions {
  readonly settings: FitSettings;
  readonly surface?: Surface;
  /** Which of the shared unknowns to estimate; thickness is added where films need it. */
  readonly estimate: readonly SharedUnknown[];
  /** Swatches not to use. */
  readonly without?: ReadonlySet<string>;
}

export function fitProblem(set: SwatchSet, options: ProblemOptions): FitProblem {
  const piles = pilesOf(set);
  const rows = responseRows(set.instrument);
  const channels = rows.length;
  const noise = readingNoise(set);
  const onGrid = cardEstimator(rows);
  const cards = new Map(set.backings.map((b) => [b.id, onGrid(b.reflectance)]));
  const films: ObservedFilm[] = [];
  const white = set.tubes.findIndex((t) => t.role === 'white');
  const asWeighed = new Float64Array(piles.errorCount);
  const filmPiles: number[] = [];
  const byPile = new Map<number, ObservedSwatch[]>();
  for (const swatch of set.swatches) {
    if (options.without?.has(swatch.id)) continue;
    const pile = piles.pileOf.get(swatch.id)!;
    let film = -1;
    if (swatch.film !== 'opaque') {
      const { drawdown, thickness } = swatch.film;
      film = films.findIndex((f) => f.id === drawdown);
      if (film < 0) {
        const { shares } = sharesOfPile(piles, pile, asWeighed);
        film =
          films.push({ id: drawdown, thickness, lnDensity: lnDensityRatio(set.tubes, white, shares) }) - 1;
        filmPiles.push(pile);
      }
    }
    const repeats = swatch.readings.length;
    const mean = Float64Array.from(
      { length: channels },
      (_, c) => swatch.readings.reduce((a, r) => a + r[c]!, 0) / repeats,
    );
    const observed: ObservedSwatch = {
      swatch,
      mean,
      variance: mean.map((v) => meanVariance(noise, v, repeats)),
      repeats,
      film,
      card: swatch.film === 'opaque' ? undefined : cards.get(swatch.backing!),
    };
    const known = byPile.get(pile);
    if (known) known.push(observed);
    else byPile.set(pile, [observed]);
  }
  const shared: SharedUnknown[] = [...options.estimate];
  if (films.some((f) => f.thickness === null)) shared.push('lnX');
  if (films.some((f) => f.thickness !== null)) shared.push('lnXPerMicrometre');
  const layout = layoutOf({
    piles,
    used: [...byPile.keys()],
    white,
    whiteScatters: films.length > 0,
    shared,
    filmPiles,
    tubeCount: set.tubes.length,
  });
  const A = new Float64Array(channels * GRID_SIZE);
  rows.forEach((row, c) => A.set(row, c * GRID_SIZE));
  return {
    set,
    settings: options.settings,
    piles,
    white,
    rows,
    A,
    channels,
    channelAt: rows.every((row) => row.includes(1))
      ? Int32Array.from(rows, (row) => row.indexOf(1))
      : undefined,
    groups: [...byPile].map(([pile, swatches]) => ({ pile, tubes: piles.piles[pile]!.tubes, swatches })),
    layout,
    surface: options.surface ?? transportSurfaceFor(set.instrument.geometry),
    topSlope: topSlopeByK2(set.instrument.geometry),
    noise,
    clipped: clipsAtZero(set),
    films,
    roughness: new Float64Array(set.tubes.length).fill(1),
  };
}
