import { GRID_SIZE } from '../../colour/grid.ts';
import { surfaceFloor } from '../optics/surface.ts';
import type { ArrowSystem } from './arrow.ts';
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
  const { layout, settings, white } = problem;
  const { K, S, whiteS } = priorsOf(problem);
  const n = layout.border;
  const from = block === undefined ? 0 : layout.blocks[block]!.offset;
  const end = block === undefined ? layout.size : from + layout.blocks[block]!.size;
  const wanted = (at: number): boolean => at >= from && at < end;
  let cost = 0;
  const spectrum = (at: number, prior: SpectrumPrior, roughness: number): void => {
    const d = new Float64Array(N);
    let sum = 0;
    for (let i = 0; i < N; i++) sum += d[i] = x[at + i]! - prior.mean;
    const times = 1 / (roughness * roughness);
    const b = at < n ? -1 : layout.blocks.findIndex((k) => at >= k.offset && at < k.offset + k.size);
    const H = b < 0 ? system?.ww : system?.bb[b];
    const size = b < 0 ? n : layout.blocks[b]!.size;
    const start = b < 0 ? at : at - layout.blocks[b]!.offset;
    for (let i = 0; i < N; i++) {
      let g = prior.level * sum;
      for (let j = Math.max(0, i - 2); j <= Math.min(N - 1, i + 2); j++) {
        g += times * prior.rough[i * N + j]! * d[j]!;
      }
      cost += (g * d[i]!) / 2;
      if (!system) continue;
      system.gradient[at + i]! += g;
      const row = (start + i) * size + start;
      for (let j = 0; j <= i; j++) H![row + j]! += prior.level;
      for (let j = Math.max(0, i - 2); j <= i; j++) H![row + j]! += times * prior.rough[i * N + j]!;
    }
  };
  layout.lnK.forEach((at, t) => at >= 0 && wanted(at) && spectrum(at, K, problem.roughness[t]!));
  layout.lnS.forEach((at, t) => at >= 0 && wanted(at) && spectrum(at, t === white ? whiteS : S, 1));

  /** A normal prior on one unknown, or on the difference to another. */
  const scalar = (at: number, mean: number, sd: number, minus?: number): void => {
    const d = (x[at]! - mean - (minus === undefined ? 0 : x[minus]!)) / sd;
    cost += (d * d) / 2;
    if (!system) return;
    const w = 1 / (sd * sd);
    const b = at < n ? -1 : layout.blocks.findIndex((k) => at >= k.offset && at < k.offset + k.size);
    system.gradient[at]! += d / sd;
    if (b < 0) system.ww[at * n + at]! += w;
    else {
      const { offset, size } = layout.blocks[b]!;
      system.bb[b]![(at - offset) * size + at - offset]! += w;
      if (minus !== undefined && block === undefined) system.bw[b]![(at - offset) * n + minus]! -= w;
    }
    if (minus !== undefined && block === undefined) {
      system.gradient[minus]! -= d / sd;
      system.ww[minus * n + minus]! += w;
    }
  };
  const { shared } = layout;
  if (shared.k2 !== undefined && wanted(shared.k2)) scalar(shared.k2, problem.surface.k2, settings.k2Sd);
  if (shared.floor !== undefined && wanted(shared.floor))
    scalar(shared.floor, surfaceFloor(problem.surface), settings.floorSd);
  if (shared.crowding !== undefined && wanted(shared.crowding))
    scalar(shared.crowding, 0, settings.crowdingSd);
  if (shared.lnX !== undefined && wanted(shared.lnX)) scalar(shared.lnX, ...LN_X);
  if (shared.lnXPerMicrometre !== undefined && wanted(shared.lnXPerMicrometre))
    scalar(shared.lnXPerMicrometre, ...LN_X_PER_MICROMETRE);
  for (const place of layout.errors) if (place >= 0 && wanted(place)) scalar(place, 0, 1);
  layout.films.forEach((place, f) => {
    if (!wanted(place)) return;
    const { thickness, lnDensity } = problem.films[f]!;
    if (thickness === null) scalar(place, lnDensity, settings.thicknessSd, shared.lnX!);
    else scalar(place, lnDensity + Math.log(thickness), settings.givenThicknessSd, shared.lnXPerMicrometre!);
  });
  return cost;
}
