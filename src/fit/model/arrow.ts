/**
 * The normal equations of a palette: a border that everything touches and blocks that touch only it. Each block is
 * eliminated by its own Cholesky factor (block elimination, a Schur complement on the border), so that the work is
 * linear in the number of tubes.
 */
import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import type { Layout } from './layout.ts';

export interface ArrowSystem {
  readonly layout: Layout;
  /** border x border, lower triangle. */
  readonly ww: Float64Array;
  /** Per block: size x size, lower triangle. */
  readonly bb: readonly Float64Array[];
  /** Per block: size x border. */
  readonly bw: readonly Float64Array[];
  readonly gradient: Float64Array;
}

/** A system of zeros; with `only`, the other blocks have no room and are left alone. */
export function emptyArrow(layout: Layout, only?: number): ArrowSystem {
  const { border, blocks } = layout;
  const wanted = (b: number): boolean => only === undefined || only === b;
  return {
    layout,
    ww: new Float64Array(border * border),
    bb: blocks.map((k, b) => new Float64Array(wanted(b) ? k.size * k.size : 0)),
    bw: blocks.map((k, b) => new Float64Array(wanted(b) ? k.size * border : 0)),
    gradient: new Float64Array(layout.size),
  };
}

/** Diagonal of the system in the order of the unknowns. */
export function arrowDiagonal({ layout, ww, bb }: ArrowSystem): Float64Array {
  const d = new Float64Array(layout.size);
  for (let i = 0; i < layout.border; i++) d[i] = ww[i * layout.border + i]!;
  layout.blocks.forEach((block, b) => {
    for (let i = 0; i < block.size; i++) d[block.offset + i] = bb[b]![i * block.size + i]!;
  });
  return d;
}

/** Factors of the eliminated system. */
export interface ArrowFactors {
  /** Cholesky of each block, and L^-1 (block by border). */
  readonly L: readonly Float64Array[];
  readonly Y: readonly Float64Array[];
  /** Cholesky of the border's Schur complement. */
  readonly border: Float64Array;
}

/** Factors (H + diag(extra)); null where it is not positive definite. */
export function factorArrow(system: ArrowSystem, extra?: Float64Array): ArrowFactors | null {
  const { layout, ww, bb, bw } = system;
  const n = layout.border;
  const border = Float64Array.from(ww);
  if (extra) for (let i = 0; i < n; i++) border[i * n + i]! += extra[i]!;
  const L: Float64Array[] = [];
  const Y: Float64Array[] = [];
  for (let b = 0; b < layout.blocks.length; b++) {
    const { size, offset } = layout.blocks[b]!;
    const l = Float64Array.from(bb[b]!);
    if (extra) for (let i = 0; i < size; i++) l[i * size + i]! += extra[offset + i]!;
    if (!choleskyInPlace(l, size)) return null;
    const y = Float64Array.from(bw[b]!);
    forwardInPlace(l, size, y, n);
    subtractSquare(border, y, size, n);
    L.push(l);
    Y.push(y);
  }
  return choleskyInPlace(border, n) ? { L, Y, border } : null;
}

/** border -= Y^T Y, lower triangle, four rows of Y at a time. */
function subtractSquare(border: Float64Array, y: Float64Array, size: number, n: number): void {
  let k = 0;
  for (; k + 3 < size; k += 4) {
    const a = k * n;
    const b = a + n;
    const c = b + n;
    const d = c + n;
    for (let i = 0; i < n; i++) {
      const v0 = y[a + i]!;
      const v1 = y[b + i]!;
      const v2 = y[c + i]!;
      const v3 = y[d + i]!;
      const to = i * n;
      for (let j = 0; j <= i; j++) {
        border[to + j]! -= v0 * y[a + j]! + v1 * y[b + j]! + v2 * y[c + j]! + v3 * y[d + j]!;
      }
    }
  }
  for (; k < size; k++) {
    const a = k * n;
    for (let i = 0; i < n; i++) {
      const v = y[a + i]!;
      for (let j = 0; j <= i; j++) border[i * n + j]! -= v * y[a + j]!;
    }
  }
}

/** Solves the factored system for one right side. */
export function solveArrow(layout: Layout, factors: ArrowFactors, right: Float64Array): Float64Array {
  const n = layout.border;
  const x = Float64Array.from(right);
  const w = x.subarray(0, n);
  layout.blocks.forEach((block, b) => {
    const z = x.subarray(block.offset, block.offset + block.size);
    forwardInPlace(factors.L[b]!, block.size, z, 1);
    const y = factors.Y[b]!;
    for (let k = 0; k < block.size; k++) {
      for (let i = 0; i < n; i++) w[i]! -= y[k * n + i]! * z[k]!;
    }
  });
  forwardInPlace(factors.border, n, w, 1);
  backwardInPlace(factors.border, n, w, 1);
  layout.blocks.forEach((block, b) => {
    const z = x.subarray(block.offset, block.offset + block.size);
    const y = factors.Y[b]!;
    for (let k = 0; k < block.size; k++) {
      let v = z[k]!;
      for (let i = 0; i < n; i++) v -= y[k * n + i]! * w[i]!;
      z[k] = v;
    }
    backwardInPlace(factors.L[b]!, block.size, z, 1);
  });
  return x;
}
