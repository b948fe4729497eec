import type { Lab } from '../../colour/lab.ts';
import { GRID_NM } from '../../colour/grid.ts';
import type { MixingPalette } from '../palette.ts';
import { type ContrastAtThickness, contrastAtThickness } from './contrast-ratio.ts';
import { type FullHiding, fullHiding } from './full-hiding.ts';
import {
  type PerMicrometre,
  type ScatteringCurve,
  absoluteScattering,
  unitsPerMicrometre,
} from './scattering.ts';
import { UNDERTONE_X, undertone } from './undertone.ts';
import { say } from '../sentences.ts';

/** A wet film of 20 m2/l, the spreading rate of ISO 6504-3 (from a published summary), um. */
export const STANDARD_MICROMETRES = 50;
/** Where no thickness is known: the film in which the white scatters this often. This project's choice. */
export const USUAL_X = 2;

/** The thickness at which a contrast ratio is asked for. */
export type StatedThickness = { readonly X: number } | { readonly micrometres: number };

interface Dense {
  readonly id: string;
  readonly density?: number | undefined;
  readonly pigments?: string[] | undefined;
}

export interface TubeFilm {
  readonly contrast: ContrastAtThickness & {
    readonly X: number;
    /** Wet, um; null where no scattering per um is known. */
    readonly micrometres: number | null;
  };
  /** Thickness for 0.98, and the same in um where it can be told (the doubt of the um included). */
  readonly fullHiding: FullHiding & {
    readonly micrometres: { readonly value: number; readonly low: number; readonly high: number } | null;
  };
  /** Of the masstone, 1/um on the grid; null where no thickness was given with the readings. */
  readonly scattering: (ScatteringCurve & { readonly wavelengths: readonly number[] }) | null;
  /** A film of X = 0.5 over a white card, with the CIEDE2000 that the truth stays under 95 times in 100. */
  readonly undertone: { readonly X: number; readonly lab: Lab; readonly radius: number };
}

/**
 * What a tube's masstone does as a film. `perMicrometre`: the white's scattering per um of wet film, where the fit
 * found one. `at`: the thickness for the contrast ratio; absent, 50 um where um are known and X = 2 where not.
 * @throws RangeError for a tube that the palette does not have, or um asked for where they are not known.
 */
export function tubeFilm(
  palette: MixingPalette,
  tube: Dense,
  white: Dense,
  options: {
    readonly perMicrometre?: PerMicrometre | undefined;
    readonly at?: StatedThickness | undefined;
  } = {},
): TubeFilm {
  const { perMicrometre } = options;
  const units = perMicrometre && unitsPerMicrometre(perMicrometre, tube, white);
  const at = options.at ?? (units ? { micrometres: STANDARD_MICROMETRES } : { X: USUAL_X });
  if ('micrometres' in at && !units) {
    throw new RangeError(say('no-thickness'));
  }
  const stated = 'X' in at ? at : { micrometres: at.micrometres, perMicrometre: units! };
  const X = 'X' in at ? at.X : at.micrometres * units!.value;
  const hiding = fullHiding(palette, tube.id);
  const under = undertone(palette, tube.id);
  return {
    contrast: {
      ...contrastAtThickness(palette, tube.id, stated),
      X,
      micrometres: units ? X / units.value : null,
    },
    fullHiding: { ...hiding, micrometres: units ? inMicrometres(hiding, units) : null },
    scattering: units ? { wavelengths: GRID_NM, ...absoluteScattering(palette, tube.id, units) } : null,
    undertone: { X: UNDERTONE_X, lab: under.lab, radius: under.radius },
  };
}

/** Independent doubts, both in the logarithm. */
function inMicrometres({ X, high }: FullHiding, units: PerMicrometre) {
  const value = X / units.value;
  const width = Math.exp(Math.hypot(Math.log(high / X), 1.96 * units.relativeSigma));
  return { value, low: value / width, high: value * width };
}
