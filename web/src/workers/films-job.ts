import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import { tristimulusWeights } from '../../../src/colour/tristimulus.ts';
import { xyzOf } from '../../../src/colour/xyz.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import { predictReflectance } from '../../../src/fit/predict.ts';
import { sealedCard } from '../../../src/fit/film-facts/card.ts';

export interface FilmsAsk {
  readonly tubeId: string;
  /** Film thicknesses in units of the white's scattering. */
  readonly thicknesses: readonly number[];
}

export interface FilmsAnswer {
  readonly films: readonly {
    readonly thickness: number;
    readonly overBlack: Float64Array;
    readonly overWhite: Float64Array;
    /** Y over black divided by Y over white. */
    readonly contrast: number;
  }[];
}

export function filmsJob(palette: MixingPalette, { tubeId, thicknesses }: FilmsAsk): FilmsAnswer {
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
  };
}
