/**
 * Fresnel's equations for unpolarised light on a smooth boundary between two clear media: M. Born and E. Wolf,
 * "Principles of Optics", section 1.5.2. `n` is the index of the medium below over that of the medium above.
 */

/** Cosine of the refracted ray for a ray of cosine `mu` coming from the side whose relative index is 1; NaN never. */
export function refractedCosine(n: number, mu: number): number {
  const sin2 = (1 - mu * mu) / (n * n);
  return sin2 >= 1 ? 0 : Math.sqrt(1 - sin2);
}

/**
 * Share of unpolarised light thrown back (0..1) for a ray of cosine `mu` (0..1) meeting a medium `n` times as dense.
 * `n` below 1 is the way out of the film: beyond the critical angle everything is thrown back.
 */
export function fresnelReflectance(n: number, mu: number): number {
  if (n === 1) return 0;
  const sin2 = (1 - mu * mu) / (n * n);
  if (sin2 >= 1) return 1;
  const mut = Math.sqrt(1 - sin2);
  const s = (mu - n * mut) / (mu + n * mut);
  const p = (n * mu - mut) / (n * mu + mut);
  return (s * s + p * p) / 2;
}
