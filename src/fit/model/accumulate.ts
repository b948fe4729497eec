import { GRID_SIZE } from '../../colour/grid.ts';
import type { ArrowSystem } from './arrow.ts';

const N = GRID_SIZE;

/** A column of the Jacobian on the grid: 36 unknowns that each move one wavelength, or one that moves all. */
export interface Column {
  /** First unknown. */
  readonly at: number;
  readonly diagonal: boolean;
  /** Per swatch of the group, 36 numbers. */
  readonly J: readonly Float64Array[];
}

/** A place in the system: the array that holds the pair (row, column) and where in it. */
interface Target {
  readonly H: Float64Array;
  readonly stride: number;
  readonly start: number;
}

/** Where unknown pairs (hi.., lo..) with hi >= lo stand: the border, the block, or between the two. */
function targetOf(system: ArrowSystem, b: number, hi: number, lo: number): Target {
  const n = system.layout.border;
  if (hi < n) return { H: system.ww, stride: n, start: hi * n + lo };
  const { offset, size } = system.layout.blocks[b]!;
  if (lo < n) return { H: system.bw[b]!, stride: n, start: (hi - offset) * n + lo };
  return { H: system.bb[b]!, stride: size, start: (hi - offset) * size + lo - offset };
}

/**
 * Adds J^T M J and -J^T G of one group to the system, M and G being weights and weighted residuals on the grid, per pair
 * of swatches. `b` is the group's block.
 */
export function accumulate(
  system: ArrowSystem,
  b: number,
  columns: readonly Column[],
  M: readonly (readonly Float64Array[])[],
  G: readonly Float64Array[],
): void {
  const MJ = columns.map(({ diagonal, J }) => (diagonal ? [] : M.map((row) => timesStack(row, J))));
  columns.forEach((p, a) => {
    p.J.forEach((J, s) => {
      for (let i = 0; i < N; i++) system.gradient[p.at + (p.diagonal ? i : 0)]! -= J[i]! * G[s]![i]!;
    });
    for (let k = 0; k <= a; k++) {
      const q = columns[k]!;
      if (p.diagonal && q.diagonal) {
        const [hi, lo] = p.at >= q.at ? [p, q] : [q, p];
        bothDiagonal(targetOf(system, b, hi.at, lo.at), hi, lo, M);
      } else if (p.diagonal || q.diagonal) {
        const [d, f, from] = p.diagonal ? [p, q, k] : [q, p, a];
        const above = f.at > d.at;
        const { H, stride, start } = targetOf(system, b, above ? f.at : d.at, above ? d.at : f.at);
        const step = above ? 1 : stride;
        MJ[from]!.forEach((v, s) => {
          const J = d.J[s]!;
          for (let i = 0; i < N; i++) H[start + i * step]! += J[i]! * v[i]!;
        });
      } else {
        const { H, start } = targetOf(system, b, Math.max(p.at, q.at), Math.min(p.at, q.at));
        MJ[k]!.forEach((v, s) => {
          const J = p.J[s]!;
          for (let i = 0; i < N; i++) H[start]! += J[i]! * v[i]!;
        });
      }
    }
  });
}

/** Adds diag(J_hi) M diag(J_lo), summed over pairs of swatches; the lower triangle where both are one column. */
function bothDiagonal(
  { H, stride, start }: Target,
  hi: Column,
  lo: Column,
  M: readonly (readonly Float64Array[])[],
): void {
  const one = hi === lo;
  if (M.length === 2) {
    // A film over two cards, the usual case, in one sweep.
    const [[aa, ab], [ba, bb]] = M as [[Float64Array, Float64Array], [Float64Array, Float64Array]];
    const [ha, hb] = hi.J as [Float64Array, Float64Array];
    const [la, lb] = lo.J as [Float64Array, Float64Array];
    for (let i = 0; i < N; i++) {
      const ja = ha[i]!;
      const jb = hb[i]!;
      const end = one ? i + 1 : N;
      const to = start + i * stride;
      const from = i * N;
      for (let j = 0; j < end; j++) {
        const k = from + j;
        H[to + j]! += (ja * aa[k]! + jb * ba[k]!) * la[j]! + (ja * ab[k]! + jb * bb[k]!) * lb[j]!;
      }
    }
    return;
  }
  M.forEach((row, s) => {
    const Jh = hi.J[s]!;
    row.forEach((m, r) => {
      const Jl = lo.J[r]!;
      for (let i = 0; i < N; i++) {
        const jh = Jh[i]!;
        const end = one ? i + 1 : N;
        const to = start + i * stride;
        const from = i * N;
        for (let j = 0; j < end; j++) H[to + j]! += jh * m[from + j]! * Jl[j]!;
      }
    });
  });
}

/** sum over swatches of M v. */
function timesStack(row: readonly Float64Array[], J: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(N);
  row.forEach((m, q) => {
    const v = J[q]!;
    for (let i = 0; i < N; i++) {
      let sum = 0;
      const from = i * N;
      for (let j = 0; j < N; j++) sum += m[from + j]! * v[j]!;
      out[i]! += sum;
    }
  });
  return out;
}
