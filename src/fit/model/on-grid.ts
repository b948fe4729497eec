import { GRID_SIZE } from '../../colour/grid.ts';
import { passingSpectrum } from './passing-spectra.ts';
import type { GroupPrediction } from './predict-group.ts';
import type { FitProblem } from './problem.ts';

const N = GRID_SIZE;

/** A^T W A of weights that were carried to the grid before: they stay the same from step to step. */
const carried = new WeakMap<Float64Array, Float64Array[][]>();

/**
 * A^T W A for each pair of swatches: the weights carried back to the grid. Where each channel is one grid wavelength
 * (`problem.channelAt`) that is a matter of placing numbers. `folded`: the slopes hold the clipping.
 */
export function weightsOnGrid(
  problem: FitProblem,
  W: Float64Array,
  { slopes, reported }: GroupPrediction,
  folded: boolean,
): Float64Array[][] {
  const plain = folded || !problem.clipped;
  const known = plain ? carried.get(W) : undefined;
  if (known) return known;
  const n = slopes.length * problem.channels;
  const M = slopes.map((_, s) =>
    slopes.map((__, q) => pairOnGrid(problem, W, plain ? undefined : reported, s, q, n)),
  );
  if (plain) carried.set(W, M);
  return M;
}

/** A^T v, swatch by swatch, of numbers v for each reading of a group. */
export function readingsOnGrid(
  problem: FitProblem,
  v: Float64Array,
  { slopes, reported }: GroupPrediction,
  folded: boolean,
): Float64Array[] {
  const { A, channels, channelAt, clipped } = problem;
  const plain = folded || !clipped;
  const out: Float64Array[] = [];
  for (let s = 0; s < slopes.length; s++) {
    const right = passingSpectrum().fill(0);
    for (let c = 0; c < channels; c++) {
      const k = s * channels + c;
      const value = plain ? v[k]! : v[k]! * reported[k]!;
      if (channelAt) right[channelAt[c]!]! += value;
      else for (let i = 0; i < N; i++) right[i]! += A[c * N + i]! * value;
    }
    out.push(right);
  }
  return out;
}

function pairOnGrid(
  { A, channels, channelAt }: FitProblem,
  W: Float64Array,
  reported: Float64Array | undefined,
  s: number,
  q: number,
  n: number,
): Float64Array {
  const block = new Float64Array(N * N);
  const by = (k: number, l: number): number => (reported ? reported[k]! * reported[l]! : 1);
  if (channelAt) {
    for (let c = 0; c < channels; c++) {
      const k = s * channels + c;
      const to = channelAt[c]! * N;
      for (let d = 0; d < channels; d++) {
        const l = q * channels + d;
        block[to + channelAt[d]!] = W[k * n + l]! * by(k, l);
      }
    }
    return block;
  }
  const half = passingSpectrum();
  for (let c = 0; c < channels; c++) {
    const k = s * channels + c;
    half.fill(0);
    for (let d = 0; d < channels; d++) {
      const l = q * channels + d;
      const w = W[k * n + l]! * by(k, l);
      if (w === 0) continue;
      for (let i = 0; i < N; i++) half[i]! += w * A[d * N + i]!;
    }
    for (let i = 0; i < N; i++) {
      const a = A[c * N + i]!;
      if (a === 0) continue;
      for (let j = 0; j < N; j++) block[i * N + j]! += a * half[j]!;
    }
  }
  return block;
}
