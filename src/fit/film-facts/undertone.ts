import type { LabRegion } from '../lab-region.ts';
import type { MixingPalette } from '../palette.ts';
import { predictWithCovariance } from '../predict.ts';
import { sealedCard } from './card.ts';
import { type FilmThickness, thicknessX } from './thickness.ts';

/** Thickness of the undertone's film, in units of the white's scattering: thin enough to show the card. This project's choice. */
export const UNDERTONE_X = 0.5;

/** Colour of a thin film over a sealed white card, with its 95 % region (the thickness's own doubt included). */
export function undertone(
  palette: MixingPalette,
  id: string,
  thickness: FilmThickness = { X: UNDERTONE_X },
): LabRegion {
  const { X, sdLnX } = thicknessX(thickness);
  return predictWithCovariance(
    palette,
    { [id]: 1 },
    { X, backing: sealedCard(palette.surface).white },
    { sdLnX },
  ).labRegion;
}
