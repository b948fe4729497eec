import { sealedCard } from '../../../src/fit/film-facts/card.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';
import { type Ground, type Masses, type MixPrediction, predictFilms } from '../../../src/mix/index.ts';

/** Films from undertone to impasto, in units of the white's scattering. */
export const MIX_FILMS = [0.25, 0.5, 1, 2, 4] as const;

export interface MixFilmsAsk {
  readonly masses: Masses;
  /** Absent: a card, half black, half white. */
  readonly ground?: Ground;
}

export interface MixFilm {
  readonly X: number;
  /** Over the ground, or over the white of the card. */
  readonly over: MixPrediction;
  /** Over the black of the card. */
  readonly overBlack?: MixPrediction;
}
/** One film each, thin first. */
export type MixFilmsAnswer = readonly MixFilm[];

export function mixFilmsJob(palette: MixingPalette, { masses, ground }: MixFilmsAsk): MixFilmsAnswer {
  const card = sealedCard(palette.surface);
  const on = (X: number, g: Ground): MixPrediction =>
    predictFilms(palette, { ground: g, films: [{ masses, X }] });
  return MIX_FILMS.map((X) =>
    ground
      ? { X, over: on(X, ground) }
      : {
          X,
          over: on(X, { reflectance: card.white }),
          overBlack: on(X, { reflectance: card.black }),
        },
  );
}
