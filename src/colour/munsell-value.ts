/**
 * Munsell value from luminance factor: ASTM D1535, "Standard Practice for Specifying Color by the Munsell System",
 * Y = 1.1914 V - 0.22533 V^2 + 0.23352 V^3 - 0.020484 V^4 + 0.00081939 V^5, Y in per cent of the perfect diffuser.
 * Strictly for illuminant C and the 2 degree observer: `value-of-reflectance.ts` computes Y there.
 */
/** Y (per cent of the perfect diffuser) of a value 0..10. */
export function luminanceOfValue(V: number): number {
  return V * (1.1914 + V * (-0.22533 + V * (0.23352 + V * (-0.020484 + V * 0.00081939))));
}

function slope(V: number): number {
  return 1.1914 + V * (-0.45066 + V * (0.70056 + V * (-0.081936 + V * 0.00409695)));
}

/** Value of a luminance factor Y in per cent. Y below 0 gives 0; Y above 100 runs a little past 10, as glossy whites do. */
export function valueOfLuminance(Y: number): number {
  if (!(Y > 0)) return 0;
  let V = Math.min(10, 0.9 * Math.cbrt(Y) + (Y < 1 ? 0 : 0.5));
  for (let i = 0; i < 50; i++) {
    const step = (luminanceOfValue(V) - Y) / slope(V);
    V -= step;
    if (Math.abs(step) < 1e-12) break;
  }
  return V;
}
