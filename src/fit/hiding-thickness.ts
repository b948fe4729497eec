import { filmReflectance } from './optics/finite-film.ts';
import { say } from './sentences.ts';

/** Full hiding: contrast ratio of ISO 6504-3 and ASTM D2805. */
export const FULL_HIDING = 0.98;
/** Thickness is sought up to this optical thickness; beyond it no card shows. */
const LONGEST = 1e4;

/**
 * Thickness X (units in which K and S are given) at which one wavelength's film over an ideal black reads `ratio` times
 * what it reads over a backing of internal reflectance `Rg`. Internal reflectances; the measured ratio differs (method.md).
 * @throws RangeError for a ratio outside 0..1, or a film that never gets there.
 */
export function hidingThickness(K: number, S: number, options: { ratio?: number; Rg?: number } = {}): number {
  const { ratio = FULL_HIDING, Rg = 0.8 } = options;
  if (!(ratio > 0 && ratio < 1)) {
    throw new RangeError(say('contrast-ratio', { ratio }));
  }
  const at = (X: number): number => filmReflectance(K, S, X, 0).R / filmReflectance(K, S, X, Rg).R;
  let low = 0;
  let high = 1 / (K + S);
  while (at(high) < ratio) {
    low = high;
    high *= 2;
    if (high * (K + S) > LONGEST) {
      throw new RangeError(say('never-hides', { K, S, ratio }));
    }
  }
  for (let pass = 0; pass < 100; pass++) {
    const middle = (low + high) / 2;
    if (at(middle) < ratio) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
