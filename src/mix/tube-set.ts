import { GRID_SIZE } from '../colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../colour/illuminant.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';
import { whitePoint } from '../colour/white-point.ts';
import type { TubeConstants } from '../fit/constants.ts';
import { surfaceFloor, surfaceGain } from '../fit/optics/surface.ts';
import { type MixingPalette, knownTubes, labelOf } from '../fit/palette.ts';
import type { Crowding } from './crowding.ts';
import { MixProblem } from './problem.ts';
import { say } from './sentences.ts';

/**
 * A palette laid out for searching: plain arrays, tubes in the order of their ids whatever order they came in, so
 * that no result depends on that order.
 *
 * Amounts inside a search are in *effective parts*: mass times `strength`. A gram of a strong blue and a gram of white
 * differ a hundredfold in what they do to a mix; one effective part of each does about as much as the other. K and S
 * here are per effective part, which changes no mix, for only ratios count.
 */
export interface TubeSet<W extends WhiteName = WhiteName> {
  readonly palette: MixingPalette;
  /** The white the colours are relative to. */
  readonly white: W;
  /** Sorted. */
  readonly ids: readonly string[];
  /** ids.length times 36 numbers, tube by tube. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  /** Effective parts per unit of mass. */
  readonly strength: Float64Array;
  /** Crowding of the white, where the set holds the white and the palette says it crowds. */
  readonly crowding?: Crowding;
  /** R_m = floor + gain R / (1 - k2 R). */
  readonly surface: { readonly floor: number; readonly gain: number; readonly k2: number };
  /** Weights for X/Xn, Y/Yn, Z/Zn under the white, and for Y/100 under C/2deg, where Munsell value lives. */
  readonly weights: readonly [Float64Array, Float64Array, Float64Array, Float64Array];
  /** What the four weighted sums are when no light leaves the film: `floor` times the sum of the weights. */
  readonly dark: readonly [number, number, number, number];
}

export interface TubeSetOptions<W extends WhiteName> {
  /** @default 'D65/10deg' */
  readonly white?: W;
  /** Ids to use; the others stay in their tubes. @default all */
  readonly only?: readonly string[];
  /** Ids not to use. */
  readonly without?: readonly string[];
}

const prepared = new WeakMap<MixingPalette, Map<string, TubeSet>>();

function checkTube(tube: TubeConstants): void {
  const id = tube.label || tube.id;
  if (tube.lnK.length !== GRID_SIZE || tube.lnS.length !== GRID_SIZE) {
    throw new MixProblem(say('tube-size', { id, k: tube.lnK.length, s: tube.lnS.length, grid: GRID_SIZE }));
  }
  for (let i = 0; i < GRID_SIZE; i++) {
    if (!Number.isFinite(tube.lnK[i]!) || !Number.isFinite(tube.lnS[i]!)) {
      throw new MixProblem(say('tube-number', { id, sample: i + 1, of: GRID_SIZE }));
    }
  }
}

/** How much a unit of mass does to a mix, about: K + S seen by the eye's luminosity (weights summing to 1). */
function strengthOf(tube: TubeConstants, luminosity: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < GRID_SIZE; i++)
    sum += luminosity[i]! * (Math.exp(tube.lnK[i]!) + Math.exp(tube.lnS[i]!));
  return sum;
}

function build<W extends WhiteName>(palette: MixingPalette, tubes: TubeConstants[], white: W): TubeSet<W> {
  const w = tristimulusWeights(white);
  const n = whitePoint(white);
  const c = tristimulusWeights('C/2deg');
  const weights = [
    w.x.map((v) => v / n.X),
    w.y.map((v) => v / n.Y),
    w.z.map((v) => v / n.Z),
    c.y.map((v) => v / 100),
  ] as const;
  const K = new Float64Array(tubes.length * GRID_SIZE);
  const S = new Float64Array(tubes.length * GRID_SIZE);
  const strength = new Float64Array(tubes.length);
  tubes.forEach((tube, t) => {
    strength[t] = strengthOf(tube, weights[3]);
    for (let i = 0; i < GRID_SIZE; i++) {
      K[t * GRID_SIZE + i] = Math.exp(tube.lnK[i]!) / strength[t]!;
      S[t * GRID_SIZE + i] = Math.exp(tube.lnS[i]!) / strength[t]!;
    }
  });
  const whiteAt = tubes.findIndex((t) => t.id === palette.white);
  const factor = palette.crowding ?? 0;
  const floor = surfaceFloor(palette.surface);
  const sum = (v: Float64Array): number => floor * v.reduce((a, b) => a + b, 0);
  return {
    palette,
    white,
    ids: tubes.map((t) => t.id),
    K,
    S,
    strength,
    ...(factor !== 0 && whiteAt >= 0
      ? {
          crowding: {
            factor,
            whiteS: tubes[whiteAt]!.lnS.map((v) => Math.exp(v)),
            whiteShare: Float64Array.from(tubes, (_, t) => (t === whiteAt ? 1 : 0)),
          },
        }
      : {}),
    surface: { floor, gain: surfaceGain(palette.surface), k2: palette.surface.k2 },
    weights,
    dark: [sum(weights[0]), sum(weights[1]), sum(weights[2]), sum(weights[3])],
  };
}

/**
 * Lays a palette out for searching; the same palette, white and choice of tubes are laid out once.
 * @throws MixProblem for an empty palette, an unknown or twice-given id, or constants that are not numbers.
 */
export function tubeSet<W extends WhiteName = typeof DEFAULT_WHITE>(
  palette: MixingPalette,
  options: TubeSetOptions<W> = {},
): TubeSet<W> {
  const white = options.white ?? (DEFAULT_WHITE as W);
  if (palette.tubes.length === 0) {
    throw new MixProblem(say('no-tubes'));
  }
  const known = palette.tubes.map((t) => t.id);
  for (const id of [...(options.only ?? []), ...(options.without ?? [])]) {
    if (!known.includes(id)) {
      throw new MixProblem(say('unknown-tube', { id, known: knownTubes(palette.tubes) }));
    }
  }
  const chosen = palette.tubes
    .filter((t) => (!options.only || options.only.includes(t.id)) && !options.without?.includes(t.id))
    .toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  if (chosen.length === 0) throw new MixProblem(say('all-left-out'));
  const twice = chosen.find((t, i) => i > 0 && chosen[i - 1]!.id === t.id);
  if (twice) throw new MixProblem(say('same-id', { id: twice.id }));
  const key = JSON.stringify([white, chosen.map((t) => t.id)]);
  const cache = prepared.get(palette) ?? new Map<string, TubeSet>();
  prepared.set(palette, cache);
  const done = cache.get(key);
  if (done) return done as TubeSet<W>;
  chosen.forEach(checkTube);
  const set = build(palette, chosen, white);
  cache.set(key, set);
  return set;
}

/** Index of a tube. @throws MixProblem naming the tubes there are. */
export function tubeIndex(set: TubeSet, id: string): number {
  const i = set.ids.indexOf(id);
  if (i < 0)
    throw new MixProblem(
      say('unknown-tube', { id, known: knownTubes(set.palette.tubes.filter((t) => set.ids.includes(t.id))) }),
    );
  return i;
}

/**
 * Masses by id as effective parts in the order of the set.
 * @throws MixProblem for an unknown tube, a negative or not finite mass, or (unless allowed) nothing at all.
 */
export function effectiveParts(
  set: TubeSet,
  masses: Readonly<Record<string, number>>,
  options: { readonly mayBeEmpty?: boolean } = {},
): Float64Array {
  const x = new Float64Array(set.ids.length);
  let total = 0;
  for (const [id, mass] of Object.entries(masses)) {
    if (!(mass >= 0 && Number.isFinite(mass))) {
      throw new MixProblem(say('mass', { id: labelOf(set.palette, id), mass }));
    }
    const i = tubeIndex(set, id);
    x[i] = mass * set.strength[i]!;
    total += mass;
  }
  if (!(total > 0) && !options.mayBeEmpty) {
    throw new MixProblem(say('no-paint'));
  }
  return x;
}
