/**
 * Paint as it lies on a picture: films over a ground, bottom first. Each film is Kubelka's film over what is under it
 * (P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448-457); between paint and paint there is no air, so reflectances pass from
 * layer to layer as they are inside the film, and the surface of the geometry acts once, on top.
 */
import { GRID_SIZE, type Spectrum, spectrumFrom } from '../colour/grid.ts';
import { discrepancyColumns } from '../fit/discrepancy.ts';
import { frameColumns } from '../fit/frame-doubt.ts';
import { filmReflectance } from '../fit/optics/finite-film.ts';
import { reflectanceLogSlope, reflectanceOfKOverS } from '../fit/optics/kubelka-munk.ts';
import { surfaceForward, surfaceInverse, surfaceSlope } from '../fit/optics/surface.ts';
import { type MixtureConstants, mixtureConstants } from '../fit/mixture.ts';
import type { MixingPalette } from '../fit/palette.ts';
import { MixProblem } from './problem.ts';
import { say } from './sentences.ts';

/** Masses by tube id, in any one unit. */
export type Masses = Readonly<Record<string, number>>;

/**
 * What lies under the films: a card or toned ground as the palette's instrument reads it bare (36 numbers), or a
 * paint thick enough to hide.
 */
export type Ground = { readonly reflectance: ArrayLike<number> } | { readonly paint: Masses };

/** One film of paint. */
export interface PaintFilm {
  readonly masses: Masses;
  /** Thickness in units of the white's scattering: 1 scatters as much as a film of white with SX = 1. 0 is no film. */
  readonly X: number;
  /** Doubt in ln X. @default 0 */
  readonly sdLnX?: number;
}

export interface FilmStack {
  readonly ground: Ground;
  /** Bottom first. May be empty: the ground itself. */
  readonly films: readonly PaintFilm[];
}

/** What the stack reads, with the factor of its covariance: Cov(measured) = F F^T. */
export interface StackReflectance {
  readonly internal: Spectrum;
  readonly measured: Spectrum;
  readonly factor: readonly Float64Array[];
}

/** dR/dK and dR/dS of one mixture in the stack, per wavelength, of the internal reflectance on top. */
interface MixtureSlopes extends MixtureConstants {
  readonly dK: Float64Array;
  readonly dS: Float64Array;
  readonly dLnX?: Float64Array;
  readonly sdLnX: number;
}

function mixture(palette: MixingPalette, masses: Masses): MixtureConstants {
  return mixtureConstants(palette, masses);
}

function groundOf(palette: MixingPalette, ground: Ground): { R: Float64Array; slopes?: MixtureSlopes } {
  if ('reflectance' in ground) {
    return { R: spectrumFrom(ground.reflectance).map((r) => surfaceInverse(palette.surface, r)) };
  }
  const mix = mixture(palette, ground.paint);
  const R = mix.K.map((k, i) => reflectanceOfKOverS(k / mix.S[i]!));
  const dK = R.map((r, i) => reflectanceLogSlope(r) / mix.K[i]!);
  const dS = R.map((r, i) => -reflectanceLogSlope(r) / mix.S[i]!);
  return { R, slopes: { ...mix, dK, dS, sdLnX: 0 } };
}

/** Columns of the covariance's factor, from slopes of the measured reflectance; `R` is the internal one on top. */
function factorOf(
  palette: MixingPalette,
  mixtures: readonly MixtureSlopes[],
  R: Float64Array,
): Float64Array[] {
  const factor: Float64Array[] = [];
  const bySlopes = new Map<string, { gK: Float64Array; gS: Float64Array }>();
  for (const { parts, dK, dS } of mixtures) {
    for (const part of parts) {
      const g = bySlopes.get(part.id) ?? { gK: new Float64Array(GRID_SIZE), gS: new Float64Array(GRID_SIZE) };
      bySlopes.set(part.id, g);
      for (let i = 0; i < GRID_SIZE; i++) {
        g.gK[i]! += dK[i]! * part.K[i]!;
        g.gS[i]! += dS[i]! * part.S[i]!;
      }
    }
  }
  const shared: Float64Array[] = [];
  for (const tube of palette.tubes) {
    const g = bySlopes.get(tube.id);
    if (!g) continue;
    const through = (column: Float64Array, into: Float64Array): Float64Array => {
      for (let i = 0; i < GRID_SIZE; i++)
        into[i]! += g.gK[i]! * column[i]! + g.gS[i]! * column[GRID_SIZE + i]!;
      return into;
    };
    for (const column of tube.own) factor.push(through(column, new Float64Array(GRID_SIZE)));
    tube.shared.forEach((column, j) => through(column, (shared[j] ??= new Float64Array(GRID_SIZE))));
  }
  // The surface acts once, on top; crowding in every layer.
  const { frameDoubt, ...steady } = palette;
  const { crowding, ...surface } = frameDoubt ?? {};
  const onTop = { K: R, S: R, parts: [], internal: R, dS: R };
  const framed = [
    ...frameColumns({ ...steady, frameDoubt: surface }, onTop),
    ...mixtures.flatMap((m) =>
      frameColumns({ ...steady, frameDoubt: crowding ? { crowding } : {} }, { ...m, internal: R }),
    ),
  ];
  for (const [j, column] of framed) {
    const into = (shared[j] ??= new Float64Array(GRID_SIZE));
    for (let i = 0; i < GRID_SIZE; i++) into[i]! += column[i]!;
  }
  factor.push(...shared);
  // A deviation d in ln(K/S) at constant K S: half of it in ln K, half taken from ln S; afresh for each mixture.
  for (const { K, S, dK, dS, dLnX, sdLnX } of mixtures) {
    for (const column of discrepancyColumns(palette.discrepancy)) {
      factor.push(column.map((d, i) => (d * (dK[i]! * K[i]! - dS[i]! * S[i]!)) / 2));
    }
    if (dLnX && sdLnX > 0) factor.push(dLnX.map((d) => d * sdLnX));
  }
  const { sdHaze } = palette.discrepancy;
  if (sdHaze) factor.push(new Float64Array(GRID_SIZE).fill(sdHaze));
  return factor;
}

/**
 * Reflectance of a stack, on the grid, as the palette's geometry reads it.
 * @throws RangeError for unknown tubes, bad masses, a thickness below 0, or a ground the surface cannot have read.
 */
export function stackReflectance(palette: MixingPalette, stack: FilmStack): StackReflectance {
  const base = groundOf(palette, stack.ground);
  let R = base.R;
  const mixtures: MixtureSlopes[] = base.slopes ? [base.slopes] : [];
  for (const film of stack.films) {
    if (!(film.X >= 0 && Number.isFinite(film.X))) {
      throw new MixProblem(say('film-thickness', { thickness: film.X }));
    }
    const mix = mixture(palette, film.masses);
    const next = new Float64Array(GRID_SIZE);
    const dK = new Float64Array(GRID_SIZE);
    const dS = new Float64Array(GRID_SIZE);
    const dLnX = new Float64Array(GRID_SIZE);
    for (let i = 0; i < GRID_SIZE; i++) {
      const at = filmReflectance(mix.K[i]!, mix.S[i]!, film.X, R[i]!);
      next[i] = at.R;
      dK[i] = at.dK;
      dS[i] = at.dS;
      dLnX[i] = at.dLnX;
      for (const below of mixtures) {
        below.dK[i]! *= at.dRg;
        below.dS[i]! *= at.dRg;
        if (below.dLnX) below.dLnX[i]! *= at.dRg;
      }
    }
    R = next;
    mixtures.push({ ...mix, dK, dS, dLnX, sdLnX: film.sdLnX ?? 0 });
  }
  for (let i = 0; i < GRID_SIZE; i++) {
    const slope = surfaceSlope(palette.surface, R[i]!);
    for (const m of mixtures) {
      m.dK[i]! *= slope;
      m.dS[i]! *= slope;
      if (m.dLnX) m.dLnX[i]! *= slope;
    }
  }
  const measured = R.map((r) => surfaceForward(palette.surface, r));
  return { internal: R, measured, factor: factorOf(palette, mixtures, R) };
}
