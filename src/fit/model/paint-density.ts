/**
 * Density of an oil paint from what is in it, where no density was given. K and S are per unit MASS, so an even film of
 * a heavy paint holds more of them than one of a light paint at the same wet thickness: without this, a white known
 * from its masstone alone would be taken for as strong as the palette's white.
 *
 * Pigment densities (g/cm3) and usual oil by mass are handbook figures from memory, rounded; they only say where the
 * search for a thickness starts and what its prior is about (standard deviation in settings.ts).
 */
import type { SwatchTube } from '../../calibrate/swatch-set/schema.ts';

/** Density of linseed oil, g/cm3. */
const OIL = 0.93;

/** Colour Index generic name: density of the pigment, share of oil by mass in a stiff paste. From memory. */
const PIGMENTS: Readonly<Record<string, readonly [density: number, oil: number]>> = {
  PW1: [6.8, 0.1],
  PW4: [5.6, 0.18],
  PW6: [4.1, 0.2],
  PW18: [2.7, 0.25],
  PW21: [4.4, 0.18],
  PBk6: [1.8, 0.6],
  PBk7: [1.8, 0.6],
  PBk9: [2.5, 0.45],
  PBk11: [4.9, 0.25],
  PB15: [1.6, 0.5],
  PB27: [1.8, 0.5],
  PB28: [4, 0.3],
  PB29: [2.35, 0.4],
  PB35: [4.5, 0.25],
  PG7: [2, 0.5],
  PG17: [5.2, 0.2],
  PG18: [3.3, 0.45],
  PG21: [3.3, 0.3],
  PG23: [2.7, 0.45],
  PR83: [1.5, 0.5],
  PR101: [4.9, 0.25],
  PR102: [3.9, 0.3],
  PR104: [5.6, 0.2],
  PR105: [8.9, 0.1],
  PR106: [8.1, 0.15],
  PR108: [4.7, 0.25],
  PBr7: [3.8, 0.4],
  PY34: [6, 0.2],
  PY35: [4.3, 0.25],
  PY37: [4.4, 0.25],
  PY40: [3.2, 0.4],
  PY41: [9, 0.1],
  PY42: [4, 0.35],
  PY43: [3.3, 0.4],
  PV14: [3.7, 0.25],
  PV15: [2.4, 0.4],
};
/** Lakes and other organic pigments, by the letters of their names (NR4, PR90, PY74). */
const ORGANIC: readonly [density: number, oil: number] = [1.5, 0.5];

function pasteDensity([pigment, oil]: readonly [number, number]): number {
  return 1 / ((1 - oil) / pigment + oil / OIL);
}

/** g/cm3 of a tube's paint: as given, else from its pigments (their mean), else undefined. */
export function paintDensity(tube: SwatchTube): number | undefined {
  if (tube.density !== undefined) return tube.density;
  const known = (tube.pigments ?? []).flatMap((name) => {
    const base = name.split(':')[0]!;
    if (PIGMENTS[base]) return [pasteDensity(PIGMENTS[base])];
    return /^(P|N)(R|Y|B|O|V|G)\d+$/.test(base) ? [pasteDensity(ORGANIC)] : [];
  });
  return known.length ? known.reduce((a, b) => a + b, 0) / known.length : undefined;
}

/**
 * ln of a mixture's density over the white's, shares by mass: 1/rho = sum c_i/rho_i. A tube without a density counts
 * as the white.
 */
export function lnDensityRatio(
  tubes: readonly SwatchTube[],
  white: number,
  shares: ArrayLike<number>,
): number {
  const of = paintDensity(tubes[white]!);
  if (of === undefined) return 0;
  let volume = 0;
  tubes.forEach((tube, t) => {
    if (shares[t]! > 0) volume += shares[t]! / (paintDensity(tube) ?? of);
  });
  return -Math.log(volume * of);
}
