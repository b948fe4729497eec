import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import { tristimulusWeights, xyzOf } from '../../../src/colour/tristimulus.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import { predictReflectance } from '../../../src/fit/predict.ts';
import type { WithDoubt } from '../../../src/fit/doubt.ts';
import { sealedCard } from '../../../src/fit/film-facts/card.ts';
import { fullHidingRatio } from '../../../src/fit/film-facts/full-hiding.ts';
import { tintingStrength } from '../../../src/fit/strength.ts';

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

export function filmsJob(palette: MixingPalette, { tubeId, thicknesses, against }: FilmsAsk): FilmsAnswer {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const card = sealedCard(palette.surface);
  const film = (X: number, backing: Float64Array): Float64Array =>
    predictReflectance(palette, { [tubeId]: 1 }, { X, backing }).measured;
  return {
    films: thicknesses.map((thickness) => {
      const overBlack = film(thickness, card.black);
      const overWhite = film(thickness, card.white);
      const contrast = xyzOf(overBlack, weights).Y / xyzOf(overWhite, weights).Y;
      return { thickness, overBlack, overWhite, contrast };
    }),
    hidingAgainstWhite:
      tubeId === palette.white ? undefined : fullHidingRatio(palette, palette.white, tubeId),
    strengthPercent:
      against === undefined || against === tubeId || tubeId === palette.white
        ? undefined
        : tintingStrength(palette, against, tubeId),
  };
}
