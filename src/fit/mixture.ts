/**
 * K and S of a mixture: K = sum c_i K_i, S = sum c_i S_i (D. R. Duncan, "The colour of pigment mixtures", Proc. Phys.
 * Soc. 52 (1940) 390-401), shares by mass and constants per unit mass, so that no density is needed. Titanium white
 * scatters less the more of it there is (J. Auger, B. Stout, J. Coat. Technol. Res. 8 (2011) 287-295): a gram of the
 * palette's white counts 1 + crowding (1 - c); the straight line is this project's choice.
 */
import { GRID_SIZE, type Spectrum } from '../colour/grid.ts';
import { type MixingPalette, sharesOf } from './palette.ts';

/** One tube's part in a mixture. */
export interface MixturePart {
  readonly id: string;
  readonly share: number;
  /** d(K)/d(ln K_i) and d(S)/d(ln S_i) of the mixture: what this tube brings. */
  readonly K: Spectrum;
  readonly S: Spectrum;
}

export interface MixtureConstants {
  readonly K: Spectrum;
  readonly S: Spectrum;
  readonly parts: readonly MixturePart[];
}

/** How much more a gram of white scatters at a share c than in its masstone. */
export function crowdingFactor(crowding: number, share: number): number {
  return 1 + crowding * (1 - share);
}

/** K and S of a mixture given as masses by tube id. @throws RangeError as `sharesOf` does. */
export function mixtureConstants(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
): MixtureConstants {
  const K = new Float64Array(GRID_SIZE);
  const S = new Float64Array(GRID_SIZE);
  const parts = sharesOf(palette, masses).map(({ tube, share }): MixturePart => {
    const crowd = tube.id === palette.white ? crowdingFactor(palette.crowding ?? 0, share) : 1;
    const part = {
      id: tube.id,
      share,
      K: tube.lnK.map((v) => share * Math.exp(v)),
      S: tube.lnS.map((v) => share * crowd * Math.exp(v)),
    };
    for (let i = 0; i < GRID_SIZE; i++) {
      K[i]! += part.K[i]!;
      S[i]! += part.S[i]!;
    }
    return part;
  });
  return { K, S, parts };
}
