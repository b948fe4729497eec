import { GRID_NM, spectrumFrom } from '../../colour/grid.ts';
import type { Spectrum } from '../../colour/grid.ts';

/**
 * What can lie under the practice head. All invented: a glazed white tile that is a little yellow, a flock-lined
 * cavity, and a green-grey check tile.
 */
export type PracticeSurface =
  | { readonly kind: 'white-tile' | 'black-trap' | 'check-tile' }
  /** A swatch by its true reflectance factor as the head's geometry sees it, on the 36-sample grid. */
  | { readonly kind: 'swatch'; readonly reflectance: Spectrum };

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const bell = (nm: number, centre: number, sd: number): number => Math.exp(-0.5 * ((nm - centre) / sd) ** 2);

/** Reflectance factor of the white tile, 45/0: what its (invented) certificate says. */
export const PRACTICE_WHITE_TILE: Spectrum = spectrumFrom(
  GRID_NM.map((nm) => 0.7 + 0.19 * logistic((nm - 395) / 16)),
);

/** Reflectance factor of the black trap. */
export const PRACTICE_BLACK_TRAP: Spectrum = spectrumFrom(GRID_NM.map(() => 0.002));

/** Reflectance factor of the check tile. */
export const PRACTICE_CHECK_TILE: Spectrum = spectrumFrom(
  GRID_NM.map((nm) => 0.22 + 0.16 * bell(nm, 525, 45) + 0.05 * logistic((nm - 640) / 20)),
);

/** Reflectance factor of a painter's own tile: matt, a little darker and cooler than the white one. */
export const PRACTICE_OWN_TILE: Spectrum = spectrumFrom(
  GRID_NM.map((nm) => 0.66 + 0.17 * logistic((nm - 390) / 20) - 0.02 * logistic((nm - 600) / 40)),
);

export function trueReflectance(surface: PracticeSurface): Spectrum {
  switch (surface.kind) {
    case 'white-tile':
      return PRACTICE_WHITE_TILE;
    case 'black-trap':
      return PRACTICE_BLACK_TRAP;
    case 'check-tile':
      return PRACTICE_CHECK_TILE;
    case 'swatch':
      return surface.reflectance;
  }
}
