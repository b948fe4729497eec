import type { Geometry } from '../../calibrate/swatch-set/schema.ts';
import type { Spectrum } from '../../colour/grid.ts';
import { say } from '../sentences.ts';

/** The second white's scattering in units of the first's. */
export interface Bridge {
  /** Id of the first white, as its profile has it. */
  readonly first: string;
  readonly second: string;
  readonly geometry: Geometry;
  /** ln of masstone scattering of the second white over the first's, on the grid. */
  readonly lnRatio: Spectrum;
  /** Columns of 36 numbers: Cov(lnRatio) = F F^T. */
  readonly factor: readonly Float64Array[];
  /** The second white's own K/S (ln) as the bridge found it. */
  readonly lnKOverS: Spectrum;
  /** One sentence: how much the second white scatters, how sure. */
  readonly words: string;
}

/** What to measure for a bridge; said wherever one is missing or too weak. */
export const WHAT_TO_MEASURE = say('what-to-measure');
