/**
 * Reflectance against albedo, held as a Chebyshev interpolant in s = sqrt(1 - w), in which the curve is smooth even
 * where a lossless film rises with a vertical tangent (J.-P. Berrut and L. N. Trefethen, "Barycentric Lagrange
 * Interpolation", SIAM Review 46 (2004) 501-517). It is off from a direct solution by less than 1e-12 in R
 * (tests/device/practice-paints.test.ts measures it), far under the noise of any instrument.
 */
import { type TransferGeometry, halfSpaceReflectance } from './half-space.ts';

const DEGREE = 40;
const NODES = Float64Array.from({ length: DEGREE + 1 }, (_, k) => (1 - Math.cos((Math.PI * k) / DEGREE)) / 2);

const tables = new Map<string, Float64Array>();

function tableFor(n: number, geometry: TransferGeometry): Float64Array {
  const key = `${n} ${geometry}`;
  let values = tables.get(key);
  if (!values) {
    values = NODES.map((s) => halfSpaceReflectance(1 - s * s, n, geometry));
    tables.set(key, values);
  }
  return values;
}

/** Reflectance factor of an opaque film at `albedo` (0..1), from the table of its index and geometry. */
export function tabledReflectance(albedo: number, n: number, geometry: TransferGeometry): number {
  if (!(albedo >= 0 && albedo <= 1)) {
    throw new RangeError(`A single-scattering albedo lies between 0 and 1; ${albedo} was given.`);
  }
  const values = tableFor(n, geometry);
  const s = Math.sqrt(1 - albedo);
  let top = 0;
  let bottom = 0;
  for (let k = 0; k <= DEGREE; k++) {
    const gap = s - NODES[k]!;
    if (gap === 0) return values[k]!;
    const w = (k === 0 || k === DEGREE ? 0.5 : 1) * (k % 2 === 0 ? 1 : -1);
    top += (w / gap) * values[k]!;
    bottom += w / gap;
  }
  return top / bottom;
}
