import { GRID_SIZE } from '../../colour/grid.ts';
import type { ModelState, PileMixture, SwatchSlopes } from './forward.ts';
import { passingSpectrum } from './passing-spectra.ts';
import type { GroupPrediction } from './predict-group.ts';
import type { FitProblem, Group } from './problem.ts';

const N = GRID_SIZE;

/** A column of the Jacobian on the grid: 36 unknowns that each move one wavelength, or one that moves all. */
export interface Column {
  /** First unknown. */
  readonly at: number;
  readonly diagonal: boolean;
  /** Per swatch of the group, 36 numbers; passing spectra. */
  readonly J: readonly Float64Array[];
}

/**
 * Columns of a group's Jacobian; with `block`, those of that block's unknowns alone. `folded`: what is reported is taken
 * into the slopes, for channels of one wavelength each.
 */
export function columnsOf(
  problem: FitProblem,
  state: ModelState,
  group: Group,
  at: GroupPrediction,
  folded: boolean,
  block?: number,
): Column[] {
  const { layout, white } = problem;
  const { shares } = at.mixture;
  const slopes = folded ? at.slopes.map((s, i) => clippedSlopes(problem, s, at.reported, i)) : at.slopes;
  const from = block === undefined ? 0 : layout.blocks[block]!.offset;
  const end = block === undefined ? layout.size : from + layout.blocks[block]!.size;
  const wanted = (place: number | undefined): place is number =>
    place !== undefined && place >= from && place < end;
  const columns: Column[] = [];
  const chi = state.crowding;
  for (const t of group.tubes) {
    const c = shares.shares[t]!;
    const cs = t === white ? c * (1 + chi * (1 - c)) : c;
    const k = layout.lnK[t]!;
    const s = layout.lnS[t]!;
    if (wanted(k)) columns.push({ at: k, diagonal: true, J: slopes.map((d) => along(d.dK, state.K, t, c)) });
    if (wanted(s)) columns.push({ at: s, diagonal: true, J: slopes.map((d) => along(d.dS, state.S, t, cs)) });
  }
  const { errors } = problem.piles.piles[group.pile]!;
  for (let k = 0; k < errors.length; k++) {
    const place = layout.errors[errors[k]!]!;
    if (wanted(place)) {
      columns.push({
        at: place,
        diagonal: false,
        J: byWeighing(problem, state, group, at.mixture, k, slopes),
      });
    }
  }
  const film = group.swatches[0]!.film;
  if (film >= 0) {
    const place = layout.films[film]!;
    if (wanted(place)) columns.push({ at: place, diagonal: false, J: slopes.map((s) => s.dLnX) });
  }
  const { k2, floor, crowding } = layout.shared;
  if (wanted(k2)) columns.push({ at: k2, diagonal: false, J: slopes.map((s) => s.dK2) });
  if (wanted(floor)) columns.push({ at: floor, diagonal: false, J: slopes.map((s) => s.dFloor) });
  if (wanted(crowding) && group.tubes.includes(white)) {
    const c = shares.shares[white]!;
    columns.push({
      at: crowding,
      diagonal: false,
      J: slopes.map((d) => along(d.dS, state.S, white, c * (1 - c))),
    });
  }
  return columns;
}

/** Slopes by the k-th weighing error of the pile. */
function byWeighing(
  { white }: FitProblem,
  state: ModelState,
  { tubes }: Group,
  { shares }: PileMixture,
  k: number,
  slopes: readonly SwatchSlopes[],
): Float64Array[] {
  const slope = shares.slopes[k]!;
  const K = passingSpectrum().fill(0);
  const S = passingSpectrum().fill(0);
  for (const t of tubes) {
    const d = slope[t]!;
    const ds = t === white ? d * (1 + state.crowding * (1 - 2 * shares.shares[t]!)) : d;
    const from = t * N;
    for (let i = 0; i < N; i++) {
      K[i]! += d * state.K[from + i]!;
      S[i]! += ds * state.S[from + i]!;
    }
  }
  return slopes.map(({ dK, dS }) => {
    const out = passingSpectrum();
    for (let i = 0; i < N; i++) out[i] = dK[i]! * K[i]! + dS[i]! * S[i]!;
    return out;
  });
}

/** Slopes of what is reported of a swatch, for channels of one wavelength each. */
function clippedSlopes(
  { channels, channelAt }: FitProblem,
  slopes: SwatchSlopes,
  reported: Float64Array,
  s: number,
): SwatchSlopes {
  const by = passingSpectrum().fill(1);
  for (let c = 0; c < channels; c++) by[channelAt![c]!] = reported[s * channels + c]!;
  const scaled = (v: Float64Array): Float64Array => {
    const out = passingSpectrum();
    for (let i = 0; i < N; i++) out[i] = v[i]! * by[i]!;
    return out;
  };
  return {
    measured: slopes.measured,
    dK: scaled(slopes.dK),
    dS: scaled(slopes.dS),
    dLnX: scaled(slopes.dLnX),
    dK2: scaled(slopes.dK2),
    dFloor: scaled(slopes.dFloor),
  };
}

/** A slope by a tube's constant times that constant and its share, wavelength by wavelength. */
function along(slope: Float64Array, constants: Float64Array, tube: number, share: number): Float64Array {
  const out = passingSpectrum();
  const from = tube * N;
  for (let i = 0; i < N; i++) out[i] = slope[i]! * constants[from + i]! * share;
  return out;
}
