/**
 * From internal to measured reflectance, by geometry: J. L. Saunderson, "Calculation of the color of pigmented
 * plastics", J. Opt. Soc. Am. 32 (1942) 727-736, and its directional form for 45/0.
 *   specular included  R_m = k1 + (1-k1)(1-k2) R / (1 - k2 R) + h
 *   specular excluded  R_m =      (1-k1)(1-k2) R / (1 - k2 R) + h
 *   45/0               R_m =                 A R / (1 - k2 R) + h,   A = (1-F45)(1-F0)/n^2
 * h is haze: light scattered by a matte or sunk surface.
 */
import type { Geometry } from '../../calibrate/swatch-set/schema.ts';
import { diffuseReflectanceInside, fresnelReflectance } from './fresnel.ts';
import { say } from '../palette-sentences.ts';

/** The constants of one surface; same shape as the palette profile's. */
export interface Surface {
  readonly form: 'specular-included' | 'specular-excluded' | '45/0';
  /** Refractive index of the film the constants were taken from. */
  readonly refractiveIndex: number;
  /** Share of light reflected at the surface at the angle of lighting, 0..0.2. */
  readonly k1: number;
  /** Share of diffuse light reflected back inside, 0..0.99. */
  readonly k2: number;
  /** 45/0 only: A = (1-F45)(1-F0)/n^2. */
  readonly escape?: number;
  /** Added to every reading, reflectance factor. */
  readonly haze: number;
}

/** Refractive index taken for a young oil film where none was given. */
export const OIL_FILM_INDEX = 1.5;

const FORMS: Record<Geometry, Surface['form']> = {
  '45/0': '45/0',
  'd/8 specular included': 'specular-included',
  'd/8 specular excluded': 'specular-excluded',
};

/** The surface that theory gives for a smooth film of one refractive index under one geometry. */
export function surfaceFor(geometry: Geometry, options: { refractiveIndex?: number } = {}): Surface {
  const n = options.refractiveIndex ?? OIL_FILM_INDEX;
  const form = FORMS[geometry];
  const F0 = fresnelReflectance(n, 0);
  const common = { form, refractiveIndex: n, k2: diffuseReflectanceInside(n), haze: 0 };
  if (form === '45/0') {
    const F45 = fresnelReflectance(n, 45);
    return { ...common, k1: F45, escape: ((1 - F45) * (1 - F0)) / (n * n) };
  }
  return { ...common, k1: F0 };
}

/**
 * The constants that serve best where Saunderson's equation stands in for radiative transfer. The equation takes the
 * light under the surface as perfectly diffuse; in a dark film it is not, and with the diffuse k2 the K/S it gives runs
 * up to 27 % off between white and masstone. With 1 - k2 larger by the factor here, and the brightest film reading
 * 0.006 more, the same equation follows the exact half-space (isotropic scatterers, smooth Fresnel boundary) within
 * 2 % of K/S, 45/0 and d/8 alike: computed by this project, held to the exact solution in tests/fit/surface.test.ts.
 */
const LESS_DIFFUSE: readonly (readonly [index: number, factor: number])[] = [
  [1, 1],
  [1.3, 1.166],
  [1.4, 1.216],
  [1.45, 1.231],
  [1.5, 1.251],
  [1.55, 1.26],
  [1.6, 1.268],
  [1.7, 1.281],
];
const BRIGHTER = 0.006;

/** The surface for a film of refractive index n as radiative transfer would have it: see LESS_DIFFUSE. */
export function transportSurfaceFor(
  geometry: Geometry,
  options: { refractiveIndex?: number; k2?: number } = {},
): Surface {
  const diffuse = surfaceFor(geometry, options);
  const n = diffuse.refractiveIndex;
  const above = LESS_DIFFUSE.findIndex(([index]) => index >= n);
  const hi = above < 0 ? LESS_DIFFUSE.length - 1 : Math.max(1, above);
  const [n0, f0] = LESS_DIFFUSE[hi - 1]!;
  const [n1, f1] = LESS_DIFFUSE[hi]!;
  const factor = f0 + ((f1 - f0) * (n - n0)) / (n1 - n0);
  const k2 = options.k2 ?? 1 - (1 - diffuse.k2) * factor;
  if (diffuse.form === '45/0') {
    const top = diffuse.escape! / (1 - diffuse.k2) + BRIGHTER;
    return { ...diffuse, k2, escape: top * (1 - k2) };
  }
  const k1 = diffuse.k1 - BRIGHTER;
  return { ...diffuse, k2, k1, haze: diffuse.form === 'specular-included' ? BRIGHTER : 0 };
}

/** Indices the slope below is taken between: 1.5 and what is about it for an oil film. */
const ABOUT_OIL = [1.4, 1.6] as const;

/**
 * What a perfect white reads above the floor falls as the index, and with it k2, rises: its slope by k2 from index 1.4 to
 * 1.6, -0.18 at 45/0 and -0.20 at d/8, a straight line within 0.002.
 */
export function topSlopeByK2(geometry: Geometry): number {
  const [low, high] = ABOUT_OIL.map((refractiveIndex) => transportSurfaceFor(geometry, { refractiveIndex }));
  return (topOf(high!) - topOf(low!)) / (high!.k2 - low!.k2);
}

/** What a perfect white reads above the floor. */
export function topOf(surface: Surface): number {
  return surface.form === '45/0' ? surface.escape! / (1 - surface.k2) : 1 - surface.k1;
}

/** Light that leaves the film per unit of R/(1 - k2 R): the factor A, or (1-k1)(1-k2). */
export function surfaceGain(surface: Surface): number {
  return surface.form === '45/0' ? surface.escape! : (1 - surface.k1) * (1 - surface.k2);
}

/** What is read where no light leaves the film: haze, and with specular included k1. */
export function surfaceFloor(surface: Surface): number {
  return surface.haze + (surface.form === 'specular-included' ? surface.k1 : 0);
}

/** Measured reflectance factor of an internal reflectance R (0..1). */
export function surfaceForward(surface: Surface, R: number): number {
  return surfaceFloor(surface) + (surfaceGain(surface) * R) / (1 - surface.k2 * R);
}

/** dR_m/dR at the internal reflectance R. */
export function surfaceSlope(surface: Surface, R: number): number {
  const d = 1 - surface.k2 * R;
  return surfaceGain(surface) / (d * d);
}

/** Change of R_m where the constants of the surface move by `by`, to first order, at the internal reflectance R. */
export function surfaceMoved(
  { form, k1, k2, escape }: Surface,
  R: number,
  by: (constant: 'k1' | 'k2' | 'escape' | 'haze') => number,
): number {
  const t = R / (1 - k2 * R);
  if (form === '45/0') return by('haze') + t * (by('escape') + escape! * t * by('k2'));
  const inside = (1 - k2) * t;
  const byK1 = (form === 'specular-included' ? 1 : 0) - inside;
  return by('haze') + byK1 * by('k1') - ((1 - k1) * t * t * (1 / R - 1) || 0) * by('k2');
}

/**
 * Internal reflectance of a measured one. A reading at or under the floor, or over that of a perfect white, belongs
 * to no film under this surface and is refused: fit forward instead of clipping.
 * @throws RangeError naming the reading and the range.
 */
export function surfaceInverse(surface: Surface, measured: number): number {
  const floor = surfaceFloor(surface);
  const top = surfaceForward(surface, 1);
  const y = measured - floor;
  // The last bits of forward(1) must come back as 1.
  if (!(y > 0 && measured <= top * (1 + 1e-12))) {
    throw new RangeError(say('no-internal', { measured, above: floor.toFixed(4), top: top.toFixed(4) }));
  }
  return Math.min(1, y / (surfaceGain(surface) + surface.k2 * y));
}
