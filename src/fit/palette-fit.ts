import type {
  Film,
  InstrumentDescription,
  ReadingNoise,
  SwatchTube,
  Weighing,
} from '../calibrate/swatch-set/schema.ts';
import type { Spectrum } from '../colour/grid.ts';
import type { TubeConstants } from './constants.ts';
import type { MixingPalette } from './palette.ts';

/** One rung or mixture as the fit left it. */
export interface RungEvidence {
  readonly id: string;
  /** Weighed share of the tube, 0..1 by mass. */
  readonly share: number;
  /** CIEDE2000 (D65/10deg) of the fitted rung against its mean reading. */
  readonly deltaE00: number;
  /** The same with this rung left out of the fit; absent where too few rungs remain. */
  readonly leftOutDeltaE00?: number;
  /** ln of (ratio it reads like / ratio weighed). */
  readonly lnRatioError: number;
  /** Repeats read, and their mean colour difference from the mean (ASTM E2214's MCDM, CIEDE2000). */
  readonly repeats: number;
  readonly mcdm?: number;
}

/** What one tube's constants rest on; same shape as the palette profile's evidence. */
export interface TubeFitEvidence {
  readonly readings: InstrumentDescription['kind'];
  readonly rungs: readonly RungEvidence[];
  readonly reducedChiSquare: number;
  readonly status: 'converged' | 'stopped';
  readonly message: string;
  readonly iterations: number;
  /** One honest line in words. */
  readonly trust: string;
  readonly warnings: readonly string[];
}

/** One tube with its constants and what they rest on. */
export interface TubeFit {
  readonly tube: SwatchTube;
  readonly constants: TubeConstants;
  readonly evidence: TubeFitEvidence;
}

/** A rung that was left out of a fit, and why. */
export interface LeftOutRung {
  /** Ids of the swatches painted from that pile. */
  readonly swatches: readonly string[];
  readonly tube: string;
  readonly words: string;
  /** Where it was the ratio: parts of white to one of paint as weighed and as it reads, and the chance of a mistake. */
  readonly weighed?: number;
  readonly readsLike?: number;
  readonly probability?: number;
  /** The two masses look to have been noted the wrong way round. */
  readonly swapped?: boolean;
}

/** Thickness of one film as the fit found it, in units of the white's scattering. */
export interface DrawdownFit {
  readonly id: string;
  /** X: white-scattering units. */
  readonly X: number;
  readonly sdLnX: number;
  /** Thickness given, um, where it was. */
  readonly micrometres: number | null;
}

/** Standard deviations of the surface constants that were estimated; absent where a constant was assumed. */
export interface SurfaceSds {
  readonly k1?: number;
  readonly k2?: number;
  readonly haze?: number;
}

/** One fitted swatch: predicted reading beside the mean of its readings, channel by channel. */
export interface FittedSwatch {
  readonly id: string;
  readonly masses: Readonly<Record<string, number>>;
  readonly film: Film;
  readonly mean: Float64Array;
  readonly predicted: Float64Array;
  /** Predicted reflectance factor on the grid. */
  readonly reflectance: Spectrum;
  readonly deltaE00: number;
}

/** Everything a fit found, and everything a profile needs. */
export interface PaletteFit {
  readonly palette: MixingPalette;
  readonly tubes: readonly TubeFit[];
  readonly surfaceSds: SurfaceSds;
  readonly drawdowns: readonly DrawdownFit[];
  readonly swatches: readonly FittedSwatch[];
  readonly noise: ReadingNoise;
  readonly weighing: Weighing;
  /** Scattering of the white per micrometre of film, where thicknesses were given. */
  readonly whiteScatteringPerMicrometre?: { readonly value: number; readonly relativeSigma: number };
  readonly status: 'converged' | 'stopped';
  readonly message: string;
  readonly iterations: number;
  /** Half the weighted sum of squares, priors included. */
  readonly cost: number;
  /** Largest component of the gradient at the end. */
  readonly optimality: number;
  readonly warnings: readonly string[];
  /** Rungs that were named and left out, the guiltiest first. */
  readonly leftOut: readonly LeftOutRung[];
}
