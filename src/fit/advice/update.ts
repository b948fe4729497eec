/**
 * What a measurement takes off the doubt. With B B^T the information of its channels and V = B^T G, the covariance of z
 * falls from I to I - V^T (I + V V^T)^-1 V (the matrix inversion lemma): small, for few channels tell of much doubt.
 */
import { choleskyInPlace, factorColumns, forwardInPlace } from '../linear/cholesky.ts';
import type { DoubtOfMixture } from './doubt-space.ts';

/** Share of each channel's information that may be left out: nothing that could be seen in a figure. */
const LEFT_OUT = 1e-6;
const LAB = 3;

export interface Update {
  /** Takes what the measurement would tell off a mixture's covariance in Lab, in place. */
  lessen(C: number[][], mixture: LabDoubt): void;
}

/** A mixture's slopes in (L, a, b): rows of three for each column of doubt. */
export interface LabDoubt {
  readonly shared: readonly (readonly number[])[];
  readonly own: ReadonlyMap<string, readonly (readonly number[])[]>;
  readonly afresh: readonly (readonly number[])[];
}

/** The update of a measurement whose slopes are `doubt` and whose channels `read` from a grid column. */
export function updateBy(
  doubt: DoubtOfMixture,
  read: (column: Float64Array) => Float64Array,
  information: Float64Array,
  channels: number,
): Update {
  const B = factorColumns(information, channels, LEFT_OUT);
  const rank = B.length;
  const through = (columns: readonly Float64Array[]): Float64Array[] =>
    columns.map((column) => {
      const g = read(column);
      return Float64Array.from(B, (b) => b.reduce((sum, v, i) => sum + v * g[i]!, 0));
    });
  const shared = through(doubt.shared);
  const own = new Map([...doubt.own].map(([id, columns]) => [id, through(columns)]));
  const L = new Float64Array(rank * rank);
  for (let i = 0; i < rank; i++) L[i * rank + i] = 1;
  for (const V of [shared, ...own.values()]) {
    for (const v of V) {
      for (let i = 0; i < rank; i++) for (let j = 0; j <= i; j++) L[i * rank + j]! += v[i]! * v[j]!;
    }
  }
  choleskyInPlace(L, rank);
  const carry = (V: readonly Float64Array[], g: readonly (readonly number[])[], h: Float64Array): void => {
    V.forEach((v, k) => {
      const [l, a, b] = g[k] as [number, number, number];
      for (let i = 0; i < rank; i++) {
        h[i * LAB]! += v[i]! * l;
        h[i * LAB + 1]! += v[i]! * a;
        h[i * LAB + 2]! += v[i]! * b;
      }
    });
  };
  const take = (C: number[][], h: Float64Array, times: number): void => {
    const y = Float64Array.from(h);
    forwardInPlace(L, rank, y, LAB);
    for (let k = 0; k < rank; k++) {
      for (let r = 0; r < LAB; r++) {
        for (let c = 0; c < LAB; c++) C[r]![c]! -= times * y[k * LAB + r]! * y[k * LAB + c]!;
      }
    }
  };
  return {
    lessen: (C, mixture) => {
      const common = new Float64Array(rank * LAB);
      carry(shared, mixture.shared, common);
      // A palette carries no covariance between two tubes' own doubts, so none is counted: what shows is what is kept.
      const known = [...own].filter(([id]) => mixture.own.has(id));
      for (const [id, V] of known) {
        const h = Float64Array.from(common);
        carry(V, mixture.own.get(id)!, h);
        take(C, h, 1);
      }
      if (known.length !== 1) take(C, common, 1 - known.length);
    },
  };
}
