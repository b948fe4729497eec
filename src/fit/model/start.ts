import { sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import { GRID_SIZE } from '../../colour/grid.ts';
import { gridEstimator } from '../observe/grid-estimate.ts';
import { surfaceFloor, surfaceGain } from '../optics/surface.ts';
import type { FitProblem } from './problem.ts';

/** A first guess need not be right, only finite: internal reflectances are taken within these. */
const DARKEST = 2e-3;
const LIGHTEST = 0.985;
/** K/S of a first guess stays within these. */
const S_RANGE = [0.01, 5] as const;
const K_RANGE = [1e-5, 1e3] as const;

const within = (v: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, v));

/**
 * Where the search starts: every film taken as opaque and every reading spread over the grid, then per wavelength the
 * linear equations c K - q c S = (1-c)(q - q_w) of a tube against the white, by weighted least squares.
 */
export function startOf(problem: FitProblem): Float64Array {
  const { layout, surface, white, piles, rows } = problem;
  const x = new Float64Array(layout.size);
  const toGrid = gridEstimator(rows);
  const zero = new Float64Array(piles.errorCount);
  const gain = surfaceGain(surface);
  const floor = surfaceFloor(surface);
  const seen = problem.groups.map((group) => {
    // Over several cards, the lightest is nearest to what an opaque film would read in a light paint, the darkest in a
    // dark one; their mean is as good a start as any.
    const R = new Float64Array(GRID_SIZE);
    for (const s of group.swatches) toGrid(s.mean).forEach((v, i) => (R[i]! += v / group.swatches.length));
    const q = R.map((v) => {
      const y = Math.max(v - floor, 1e-6);
      const r = within(y / (gain + surface.k2 * y), [DARKEST, LIGHTEST]);
      return ((1 - r) * (1 - r)) / (2 * r);
    });
    return { group, q, shares: sharesOfPile(piles, group.pile, zero).shares };
  });
  const whites = seen.filter(({ shares }) => shares[white] === 1);
  const qWhite = new Float64Array(GRID_SIZE);
  for (const { q } of whites) q.forEach((v, i) => (qWhite[i]! += v / whites.length));
  for (let i = 0; i < GRID_SIZE; i++) x[layout.lnK[white]! + i] = Math.log(Math.max(qWhite[i]!, 1e-4));

  problem.set.tubes.forEach((_, t) => {
    const k = layout.lnK[t]!;
    if (t === white || k < 0) return;
    const own = seen.filter(({ shares }) => shares[t]! > 0 && shares[t]! + shares[white]! > 1 - 1e-9);
    for (let i = 0; i < GRID_SIZE; i++) {
      // Ridge toward K = q S of the strongest rung at S = 0.2.
      let [aa, ab, bb, ar, br] = [1e-9, 0, 1e-9, 0, 1e-9 * 0.2];
      for (const { q, shares } of own) {
        const c = shares[t]!;
        const r = 1 / (1 + q[i]! + Math.sqrt(q[i]! * (q[i]! + 2)));
        const w = ((2 * r * r) / (1 - r * r)) ** 2 / 1;
        const [a, b, right] = [c, -q[i]! * c, (1 - c) * (q[i]! - qWhite[i]!)];
        aa += w * a * a;
        ab += w * a * b;
        bb += w * b * b;
        ar += w * a * right;
        br += w * b * right;
      }
      const det = aa * bb - ab * ab;
      const S = within(det > 0 ? (aa * br - ab * ar) / det : 0.2, S_RANGE);
      const K = within((ar - ab * S) / aa, K_RANGE);
      x[k + i] = Math.log(K);
      x[layout.lnS[t]! + i] = Math.log(S);
    }
  });
  const { shared } = layout;
  if (shared.k2 !== undefined) x[shared.k2] = surface.k2;
  if (shared.floor !== undefined) x[shared.floor] = floor;
  if (shared.lnX !== undefined) x[shared.lnX] = 1.5;
  if (shared.lnXPerMicrometre !== undefined) x[shared.lnXPerMicrometre] = -2.5;
  layout.films.forEach((place, f) => {
    const { thickness, lnDensity } = problem.films[f]!;
    x[place] = lnDensity + (thickness === null ? 1.5 : Math.log(thickness) - 2.5);
  });
  return x;
}
