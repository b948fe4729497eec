import { GRID_SIZE } from '../../colour/grid.ts';
import { surfaceFloor } from '../optics/surface.ts';
import type { ArrowSystem } from './arrow.ts';
import type { Layout } from './layout.ts';
import type { FitProblem } from './problem.ts';
import { type SpectrumPrior, smoothnessPrior } from './smoothness.ts';

const N = GRID_SIZE;
/** The mean scattering of the white is the unit of S: it is held at 1 this tightly where it is free. */
const UNIT_SD = 1e-3;
/** ln thickness of a session, in units of the white's scattering: a brushed or drawn oil film. */
const LN_X = [1.5, 3] as const;
const LN_X_PER_MICROMETRE = [-2.5, 3] as const;

interface Priors {
  readonly K: SpectrumPrior;
  readonly S: SpectrumPrior;
  readonly whiteS: SpectrumPrior;
}

const known = new WeakMap<FitProblem['settings'], Priors>();

function priorsOf({ settings: s }: FitProblem): Priors {
  let p = known.get(s);
  if (!p) {
    p = {
      K: smoothnessPrior(s.k1st, s.k2nd, s.kLevel),
      S: smoothnessPrior(s.s1st, s.s2nd, s.sLevel),
      whiteS: smoothnessPrior(s.white1st, s.white2nd, [0, UNIT_SD]),
    };
    known.set(s, p);
  }
  return p;
}

/**
 * Adds every prior's gradient and curvature to the system (where there is one); returns half its sum of squares. With
 * `block`, those of one block's unknowns alone.
 */
export function addPriors(
  problem: FitProblem,
  x: Float64Array,
  system: ArrowSystem | null,
  block?: number,
): number {
  const { layout, roughness, white } = problem;
  const { K, S, whiteS } = priorsOf(problem);
  const asked = block === undefined ? everyBlock(layout) : [block];
  let cost = 0;
  for (const b of asked) {
    for (const t of layout.blocks[b]!.tubes) {
      cost += spectrum(x, system, b, layout.lnK[t]!, K, roughness[t]!);
      cost += spectrum(x, system, b, layout.lnS[t]!, S, 1);
    }
    cost += blockScalars(problem, x, system, b, block === undefined);
  }
  if (block !== undefined) return cost;
  cost += spectrum(x, system, -1, layout.lnK[white]!, K, roughness[white]!);
  if (layout.lnS[white]! >= 0) cost += spectrum(x, system, -1, layout.lnS[white]!, whiteS, 1);
  return cost + sharedScalars(problem, x, system);
}

function everyBlock({ blocks }: Layout): number[] {
  return blocks.map((_, b) => b);
}

/** The prior on a spectrum at `at`, in block `b` or in the border (-1). */
function spectrum(
  x: Float64Array,
  system: ArrowSystem | null,
  b: number,
  at: number,
  { rough, level, mean }: SpectrumPrior,
  roughness: number,
): number {
  let sum = 0;
  for (let i = 0; i < N; i++) sum += x[at + i]! - mean;
  const times = 1 / (roughness * roughness);
  let cost = 0;
  for (let i = 0; i < N; i++) {
    let g = level * sum;
    const end = Math.min(N - 1, i + 2);
    for (let j = Math.max(0, i - 2); j <= end; j++) g += times * rough[i * N + j]! * (x[at + j]! - mean);
    cost += (g * (x[at + i]! - mean)) / 2;
    if (system) system.gradient[at + i]! += g;
  }
  if (!system) return cost;
  const { border, blocks } = system.layout;
  const H = b < 0 ? system.ww : system.bb[b]!;
  const size = b < 0 ? border : blocks[b]!.size;
  const start = b < 0 ? at : at - blocks[b]!.offset;
  for (let i = 0; i < N; i++) {
    const row = (start + i) * size + start;
    for (let j = 0; j <= i; j++) H[row + j]! += level;
    for (let j = Math.max(0, i - 2); j <= i; j++) H[row + j]! += times * rough[i * N + j]!;
  }
  return cost;
}

/** Weighing errors and film thicknesses of one block; `whole`: a thickness pulls at the common one, too. */
function blockScalars(
  problem: FitProblem,
  x: Float64Array,
  system: ArrowSystem | null,
  b: number,
  whole: boolean,
): number {
  const { layout, settings } = problem;
  const { offset, size } = layout.blocks[b]!;
  const H = system?.bb[b];
  const { errors, films } = scalarsOf(layout)[b]!;
  let cost = 0;
  const add = (at: number, off: number, sd: number): void => {
    cost += (off * off) / (2 * sd * sd);
    if (!system) return;
    system.gradient[at]! += off / (sd * sd);
    H![(at - offset) * (size + 1)]! += 1 / (sd * sd);
  };
  for (const at of errors) add(at, x[at]!, 1);
  for (const f of films) {
    const { thickness, lnDensity } = problem.films[f]!;
    const at = layout.films[f]!;
    const given = thickness !== null;
    const common = given ? layout.shared.lnXPerMicrometre! : layout.shared.lnX!;
    const sd = given ? settings.givenThicknessSd : settings.thicknessSd;
    const off = x[at]! - x[common]! - lnDensity - (given ? Math.log(thickness) : 0);
    add(at, off, sd);
    if (!system || !whole) continue;
    const w = 1 / (sd * sd);
    system.bw[b]![(at - offset) * layout.border + common]! -= w;
    system.gradient[common]! -= w * off;
    system.ww[common * (layout.border + 1)]! += w;
  }
  return cost;
}

function sharedScalars(
  { layout, settings, surface }: FitProblem,
  x: Float64Array,
  system: ArrowSystem | null,
) {
  let cost = 0;
  const add = (at: number | undefined, mean: number, sd: number): void => {
    if (at === undefined) return;
    const off = (x[at]! - mean) / sd;
    cost += (off * off) / 2;
    if (!system) return;
    system.gradient[at]! += off / sd;
    system.ww[at * (layout.border + 1)]! += 1 / (sd * sd);
  };
  const { k2, floor, crowding, lnX, lnXPerMicrometre } = layout.shared;
  add(k2, surface.k2, settings.k2Sd);
  add(floor, surfaceFloor(surface), settings.floorSd);
  add(crowding, 0, settings.crowdingSd);
  add(lnX, ...LN_X);
  add(lnXPerMicrometre, ...LN_X_PER_MICROMETRE);
  return cost;
}

interface BlockScalars {
  /** Places of weighing errors. */
  readonly errors: number[];
  /** Films by their index. */
  readonly films: number[];
}

const scalars = new WeakMap<Layout, BlockScalars[]>();

/** What each block holds beside its spectra. */
function scalarsOf(layout: Layout): BlockScalars[] {
  let found = scalars.get(layout);
  if (!found) {
    found = layout.blocks.map(({ offset, size }) => {
      const here = (place: number): boolean => place >= offset && place < offset + size;
      return {
        errors: [...layout.errors].filter(here),
        films: [...layout.films.keys()].filter((f) => here(layout.films[f]!)),
      };
    });
    scalars.set(layout, found);
  }
  return found;
}
