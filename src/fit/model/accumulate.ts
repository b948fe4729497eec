import { GRID_SIZE } from '../../colour/grid.ts';
import type { ArrowSystem } from './arrow.ts';
import type { Column } from './columns.ts';
import { passingSpectrum } from './passing-spectra.ts';

const N = GRID_SIZE;

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
  addTransposed(columns, G, -1, system.gradient);
  for (let a = 0; a < columns.length; a++) {
    const p = columns[a]!;
    if (p.diagonal) {
      for (let k = 0; k <= a; k++) {
        const q = columns[k]!;
        if (!q.diagonal) continue;
        const [hi, lo] = p.at >= q.at ? [p, q] : [q, p];
        bothDiagonal(targetOf(system, b, hi.at, lo.at), hi, lo, M);
      }
      continue;
    }
    const weighed = timesStack(M, p.J);
    for (let k = 0; k < columns.length; k++) {
      const q = columns[k]!;
      if (q.diagonal) oneDiagonal(system, b, p, weighed, q);
      else if (k <= a) {
        const { H, start } = targetOf(system, b, Math.max(p.at, q.at), Math.min(p.at, q.at));
        for (let s = 0; s < weighed.length; s++) H[start]! += dot(weighed[s]!, q.J[s]!);
      }
    }
  }
}

/** Adds J^T G, so many times. */
export function addTransposed(
  columns: readonly Column[],
  G: readonly Float64Array[],
  times: number,
  into: Float64Array,
): void {
  for (const { at, diagonal, J } of columns) {
    for (let s = 0; s < J.length; s++) {
      const j = J[s]!;
      const g = G[s]!;
      if (diagonal) for (let i = 0; i < N; i++) into[at + i]! += times * j[i]! * g[i]!;
      else into[at]! += times * dot(j, g);
    }
  }
}

function oneDiagonal(
  system: ArrowSystem,
  b: number,
  full: Column,
  weighed: readonly Float64Array[],
  diagonal: Column,
): void {
  const above = full.at > diagonal.at;
  const [hi, lo] = above ? [full.at, diagonal.at] : [diagonal.at, full.at];
  const { H, stride, start } = targetOf(system, b, hi, lo);
  const step = above ? 1 : stride;
  for (let s = 0; s < weighed.length; s++) {
    const v = weighed[s]!;
    const J = diagonal.J[s]!;
    for (let i = 0; i < N; i++) H[start + i * step]! += J[i]! * v[i]!;
  }
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
  for (let s = 0; s < M.length; s++) {
    const Jh = hi.J[s]!;
    for (let r = 0; r < M.length; r++) {
      const m = M[s]![r]!;
      const Jl = lo.J[r]!;
      for (let i = 0; i < N; i++) {
        const jh = Jh[i]!;
        const end = one ? i + 1 : N;
        const to = start + i * stride;
        const from = i * N;
        for (let j = 0; j < end; j++) H[to + j]! += jh * m[from + j]! * Jl[j]!;
      }
    }
  }
}

/** M J, swatch by swatch; M is symmetric. */
function timesStack(M: readonly (readonly Float64Array[])[], J: readonly Float64Array[]): Float64Array[] {
  const out: Float64Array[] = [];
  for (let s = 0; s < M.length; s++) {
    const sum = passingSpectrum().fill(0);
    for (let q = 0; q < M.length; q++) addProduct(M[s]![q]!, J[q]!, sum);
    out.push(sum);
  }
  return out;
}

/** out += m v, four rows at a time. */
function addProduct(m: Float64Array, v: Float64Array, out: Float64Array): void {
  for (let i = 0; i < N; i += 4) {
    const a = i * N;
    const b = a + N;
    const c = b + N;
    const d = c + N;
    let va = 0;
    let vb = 0;
    let vc = 0;
    let vd = 0;
    for (let j = 0; j < N; j++) {
      const x = v[j]!;
      va += m[a + j]! * x;
      vb += m[b + j]! * x;
      vc += m[c + j]! * x;
      vd += m[d + j]! * x;
    }
    out[i]! += va;
    out[i + 1]! += vb;
    out[i + 2]! += vc;
    out[i + 3]! += vd;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < N; i++) sum += a[i]! * b[i]!;
  return sum;
}
