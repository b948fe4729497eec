/** Absolute scattering: constants are relative to the white's, per unit mass; a film of known thickness makes them 1/um. */
import { GRID_SIZE } from '../../colour/grid.ts';
import type { SwatchTube } from '../../calibrate/swatch-set/schema.ts';
import { paintDensity } from '../model/paint-density.ts';
import { type MixingPalette, tubeOf } from '../palette.ts';
import { NORMAL_95_TWO_SIDED } from './contrast-ratio.ts';

/** Something per micrometre, with its relative standard deviation. */
export interface PerMicrometre {
  readonly value: number;
  readonly relativeSigma: number;
}

/** Relative doubt of a ratio of densities of which one or both were taken from the pigments. This project's choice. */
const DENSITY_SIGMA = 0.1;

type Dense = Pick<SwatchTube, 'id' | 'density' | 'pigments'>;

/**
 * Units of thickness (the white's scattering) in one micrometre of a tube's wet film: the white's, times how much denser
 * the paint is, for its constants are per mass.
 */
export function unitsPerMicrometre(ofWhite: PerMicrometre, tube: Dense, white: Dense): PerMicrometre {
  if (tube.id === white.id) return ofWhite;
  const [own, whites] = [paintDensity(tube), paintDensity(white)];
  const ratio = own !== undefined && whites !== undefined ? own / whites : 1;
  const sure = tube.density !== undefined && white.density !== undefined;
  return {
    value: ofWhite.value * ratio,
    relativeSigma: sure ? ofWhite.relativeSigma : Math.hypot(ofWhite.relativeSigma, DENSITY_SIGMA),
  };
}

/** Per micrometre of wet film, on the grid, with bounds that hold the truth 95 times in 100. */
export interface ScatteringCurve {
  readonly value: number[];
  readonly low: number[];
  readonly high: number[];
}

/** A tube's masstone scattering per micrometre. @throws RangeError for a tube that the palette does not have. */
export function absoluteScattering(
  palette: MixingPalette,
  id: string,
  units: PerMicrometre,
): ScatteringCurve {
  const { lnS, own, shared } = tubeOf(palette, id);
  const value = Array.from(lnS, (v) => Math.exp(v) * units.value);
  const factor = value.map((_, i) => {
    const variance = [...own, ...shared].reduce((sum, c) => sum + c[GRID_SIZE + i]! ** 2, 0);
    return Math.exp(NORMAL_95_TWO_SIDED * Math.sqrt(variance + units.relativeSigma ** 2));
  });
  return {
    value,
    low: value.map((v, i) => v / factor[i]!),
    high: value.map((v, i) => v * factor[i]!),
  };
}
