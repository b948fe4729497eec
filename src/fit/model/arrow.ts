/**
 * The normal equations of a palette: a border that everything touches and blocks that touch only it. Each block is
 * eliminated by its own Cholesky factor (block elimination, a Schur complement on the border), so that the work is
 * linear in the number of tubes.
 */
import { backwardInPlace, choleskyInPlace, forwardInPlace, subtractSquare } from '../linear/cholesky.ts';
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

/**
 * A system of zeros; with `only`, that block alone has room, and none beside the border. `room` is a system of the same
 * kind that is done with: taking its place is quicker than new memory, step after step.
 */
export function emptyArrow(layout: Layout, only?: number, room?: ArrowSystem): ArrowSystem {
  if (room) {
    room.ww.fill(0);
    room.gradient.fill(0);
    for (let b = 0; b < layout.blocks.length; b++) {
      if (only === undefined || only === b) room.bb[b]!.fill(0);
      room.bw[b]!.fill(0);
    }
    return room;
  }
  const { border, blocks } = layout;
  const all = only === undefined;
  return {
    layout,
    ww: new Float64Array(all ? border * border : 0),
    bb: blocks.map((k, b) => new Float64Array(all || only === b ? k.size * k.size : 0)),
    bw: blocks.map((k) => new Float64Array(all ? k.size * border : 0)),
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

/** Room for the factors of a system, to be used again and again. */
export function roomForFactors({ border, blocks }: Layout): ArrowFactors {
  return {
    L: blocks.map(({ size }) => new Float64Array(size * size)),
    Y: blocks.map(({ size }) => new Float64Array(size * border)),
    border: new Float64Array(border * border),
  };
}

/** Factors (H + diag(extra)), in `room`; null where it is not positive definite. */
export function factorArrow(
  system: ArrowSystem,
  extra?: Float64Array,
  room: ArrowFactors = roomForFactors(system.layout),
): ArrowFactors | null {
  const { layout, ww, bb, bw } = system;
  const n = layout.border;
  const { border } = room;
  border.set(ww);
  if (extra) for (let i = 0; i < n; i++) border[i * n + i]! += extra[i]!;
  for (let b = 0; b < layout.blocks.length; b++) {
    const { size, offset } = layout.blocks[b]!;
    const l = room.L[b]!;
    l.set(bb[b]!);
    if (extra) for (let i = 0; i < size; i++) l[i * size + i]! += extra[offset + i]!;
    if (!choleskyInPlace(l, size)) return null;
    const y = room.Y[b]!;
    y.set(bw[b]!);
    forwardInPlace(l, size, y, n);
    subtractSquare(border, y, size, n);
  }
  return choleskyInPlace(border, n) ? room : null;
}

/** Solves the factored system for one right side. */
export function solveArrow(layout: Layout, factors: ArrowFactors, right: Float64Array): Float64Array {
  const n = layout.border;
  const x = right.slice();
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
