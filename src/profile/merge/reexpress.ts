/**
 * Constants mean something together with the surface and the white's crowding they were fitted with. To stand beside
 * tubes fitted with others, a tube is given the K and S that read the same along its ladder (masstone, 1:1, 1:4, 1:16)
 * under the other surface and crowding: with q_j the K/S that the other surface needs for rung j, the linear equations
 *   c K - q_j c S = (1 - c) (q_j w S_w - K_w),   w = 1 + crowding c      (D. R. Duncan, 1940, solved for one tube)
 * by weighted least squares in relative changes of K and S, held to small changes where a rung says nothing of them.
 */
import { GRID_SIZE, type Spectrum } from '../../colour/grid.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { framedColumns } from '../../fit/frame-doubt.ts';
import { crowdingFactor } from '../../fit/mixture.ts';
import { kOverS, reflectanceLogSlope } from '../../fit/optics/kubelka-munk.ts';
import { type Surface, surfaceFloor, surfaceForward, surfaceInverse } from '../../fit/optics/surface.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { predictReflectance } from '../../fit/predict.ts';
import { type ReadingFrame, movedFrame, paletteMovedBy } from './moved-frame.ts';

/** Shares of the tube in a whole ladder. */
const LADDER = [1, 1 / 2, 1 / 5, 1 / 17];
/** An internal reflectance counts as known to this share of itself, and K and S as unchanged to this: our choice. */
const RELATIVE_SD = 1e-3;
const CHANGE_SD = 0.3;

export function sameFrame(a: ReadingFrame, b: ReadingFrame): boolean {
  const [p, q] = [a.surface, b.surface];
  return (
    p.form === q.form &&
    p.k1 === q.k1 &&
    p.k2 === q.k2 &&
    p.haze === q.haze &&
    p.escape === q.escape &&
    (a.crowding ?? 0) === (b.crowding ?? 0)
  );
}

/**
 * The palette under another surface and crowding of the same form, each tube's ladder (`shares` of the tube in white)
 * reading as before. Covariance columns stay as they are, for they are relative deviations and the change is small; those
 * that moved the old frame become what they do to the tubes under the new one, which is taken as known.
 */
export function reexpressed(
  palette: MixingPalette,
  frame: ReadingFrame,
  shares: readonly number[] = LADDER,
): MixingPalette {
  if (frame === palette) return palette;
  const { frameDoubt: _frameDoubt, ...known } = palette;
  const there = constantsUnder(known, frame, shares);
  const framed = framedColumns(palette.frameDoubt);
  if (framed.length === 0) return there;
  // The new frame is known, so that what the old one's doubt did is left to the tubes: less what reads the same.
  const moved = new Map(framed.map((j) => [j, constantsUnder(paletteMovedBy(palette, j)!, frame, shares)]));
  return {
    ...there,
    tubes: there.tubes.map((tube, t) => ({
      ...tube,
      shared: tube.shared.map((column, j) =>
        moved.has(j) ? differenceOf(moved.get(j)!.tubes[t]!, tube) : column,
      ),
    })),
  };
}

/**
 * How these tubes, which stand in the frame of `host`, would follow each of its shared numbers if they were to read the
 * same along their ladders: by tube, one column for each number that moves the frame.
 */
export function followingFrame(
  palette: MixingPalette,
  host: Pick<MixingPalette, 'frameDoubt'>,
  shares: readonly number[] = LADDER,
): readonly ReadonlyMap<number, Float64Array>[] {
  const { frameDoubt: _frameDoubt, ...known } = palette;
  const moved = framedColumns(host.frameDoubt).map(
    (j) => [j, constantsUnder(known, movedFrame(palette, host.frameDoubt!, j), shares)] as const,
  );
  return palette.tubes.map(
    (tube, t) => new Map(moved.map(([j, { tubes }]) => [j, differenceOf(tubes[t]!, tube)] as const)),
  );
}

function differenceOf(a: TubeConstants, b: TubeConstants): Float64Array {
  return Float64Array.from([...a.lnK.map((v, i) => v - b.lnK[i]!), ...a.lnS.map((v, i) => v - b.lnS[i]!)]);
}

function constantsUnder(
  palette: MixingPalette,
  frame: ReadingFrame,
  shares: readonly number[],
): MixingPalette {
  if (sameFrame(palette, frame)) return palette;
  const { crowding: _crowding, ...rest } = palette;
  const white = reexpressedWhite(palette, frame.surface);
  return {
    ...rest,
    surface: frame.surface,
    ...(frame.crowding ? { crowding: frame.crowding } : {}),
    tubes: palette.tubes.map((t) =>
      t.id === palette.white ? white : reexpressedTube(palette, t, white, frame, shares),
    ),
  };
}

/** K/S that reads as `measured`; undefined where no film reads that under the surface. */
function qOf(surface: Surface, measured: number): number | undefined {
  const floor = surfaceFloor(surface);
  const R = measured > floor && measured < surfaceForward(surface, 1) ? surfaceInverse(surface, measured) : 0;
  return R > 0 && R < 1 ? kOverS(R) : undefined;
}

function reexpressedWhite(palette: MixingPalette, surface: Surface): TubeConstants {
  const white = tubeOf(palette, palette.white);
  const { measured } = predictReflectance(palette, { [white.id]: 1 });
  const lnK = white.lnK.map((v, i) => {
    const q = qOf(surface, measured[i]!);
    return q === undefined ? v : Math.log(q) + white.lnS[i]!;
  });
  return { ...white, lnK };
}

function reexpressedTube(
  palette: MixingPalette,
  tube: TubeConstants,
  white: TubeConstants,
  frame: ReadingFrame,
  shares: readonly number[],
): TubeConstants {
  const rungs = shares.map((c) => ({
    c,
    measured: predictReflectance(palette, { [tube.id]: c, ...(c < 1 ? { [white.id]: 1 - c } : {}) }).measured,
  }));
  const lnK = Float64Array.from(tube.lnK);
  const lnS = Float64Array.from(tube.lnS);
  for (let i = 0; i < GRID_SIZE; i++) {
    const change = changeAt(i, tube, white, rungs, frame);
    if (!change) continue;
    lnK[i]! += Math.log1p(change.K);
    lnS[i]! += Math.log1p(change.S);
  }
  return { ...tube, lnK, lnS };
}

/** Relative changes of K and S at one wavelength; undefined where they would not stay small. */
function changeAt(
  i: number,
  tube: TubeConstants,
  white: TubeConstants,
  rungs: readonly { readonly c: number; readonly measured: Spectrum }[],
  frame: ReadingFrame,
): { K: number; S: number } | undefined {
  const [K, S] = [Math.exp(tube.lnK[i]!), Math.exp(tube.lnS[i]!)];
  const [Kw, Sw] = [Math.exp(white.lnK[i]!), Math.exp(white.lnS[i]!)];
  const ridge = CHANGE_SD ** -2;
  let [aa, ab, bb, ar, br] = [ridge, 0, ridge, 0, 0];
  for (const { c, measured } of rungs) {
    const q = qOf(frame.surface, measured[i]!);
    if (q === undefined) continue;
    const whiteS = (1 - c) * crowdingFactor(frame.crowding ?? 0, 1 - c) * Sw;
    const R = 1 / (1 + q + Math.sqrt(q * (q + 2)));
    // The equation's imbalance over q S is a relative error of q; times dR/dln q it is one of the reading.
    const w = Math.abs(reflectanceLogSlope(R)) / (RELATIVE_SD * R * q * (c * S + whiteS));
    const a = w * c * K;
    const b = -w * q * c * S;
    const r = w * (q * whiteS - (1 - c) * Kw) - a - b;
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ar += a * r;
    br += b * r;
  }
  const det = aa * bb - ab * ab;
  const change = { K: (bb * ar - ab * br) / det, S: (aa * br - ab * ar) / det };
  return change.K > -0.9 && change.S > -0.9 && Number.isFinite(change.K + change.S) ? change : undefined;
}
