import { flatSpectrum } from '../../../src/colour/grid.ts';
import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import { tristimulusWeights, xyzOf } from '../../../src/colour/tristimulus.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import { predictReflectance } from '../../../src/fit/predict.ts';
import type { WithDoubt } from '../../../src/profile/compare/doubt.ts';
import { tubeDifference } from '../../../src/profile/compare/tube-difference.ts';

export interface FilmsAsk {
  readonly tubeId: string;
  /** Film thicknesses in units of the white's scattering. */
  readonly thicknesses: readonly number[];
  /** The tube whose tinting strength counts as 100 %; absent: no strength is answered. */
  readonly against?: string;
}

export interface FilmsAnswer {
  readonly films: readonly {
    readonly thickness: number;
    readonly overBlack: Float64Array;
    readonly overWhite: Float64Array;
    /** Y over black divided by Y over white. */
    readonly contrast: number;
  }[];
  /** Film this tube needs to hide, as a multiple of the film the white needs; undefined for the white itself. */
  readonly hidingAgainstWhite: WithDoubt | undefined;
  /** Per cent of the other tube's tinting strength. */
  readonly strengthPercent: WithDoubt | undefined;
}

/** A sealed card as it is read: ASTM D2805 asks for at least 0.78 over white and at most 0.01 over black. */
const CARD = { white: flatSpectrum(0.82), black: flatSpectrum(0.01) };

export function filmsJob(palette: MixingPalette, { tubeId, thicknesses, against }: FilmsAsk): FilmsAnswer {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const film = (X: number, backing: Float64Array): Float64Array =>
    predictReflectance(palette, { [tubeId]: 1 }, { X, backing }).measured;
  return {
    films: thicknesses.map((thickness) => {
      const overBlack = film(thickness, CARD.black);
      const overWhite = film(thickness, CARD.white);
      const contrast = xyzOf(overBlack, weights).Y / xyzOf(overWhite, weights).Y;
      return { thickness, overBlack, overWhite, contrast };
    }),
    hidingAgainstWhite:
      tubeId === palette.white
        ? undefined
        : tubeDifference(palette, palette.white, tubeId).hidingThicknessRatio,
    strengthPercent:
      against === undefined || against === tubeId || tubeId === palette.white
        ? undefined
        : tubeDifference(palette, against, tubeId).strengthPercent,
  };
}
