/**
 * Special metamerism index, change of illuminant: the colour difference, under a test illuminant, of a pair that
 * matches under the reference one (ISO 18314-4). Where the pair does not quite match, the sample is first corrected
 * by multiplication, X' = X_sample,test X_target,ref / X_sample,ref and so for Y and Z (the form of DIN 6172, from memory).
 * Needs two spectra: from tristimulus values alone there is nothing to say.
 */
import { ciede2000 } from '../colour/ciede2000.ts';
import { DEFAULT_WHITE, type Illuminant, type WhiteName, whiteParts } from '../colour/illuminant.ts';
import { labOf } from '../colour/lab.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';
import { xyzOf } from '../colour/xyz.ts';
import { MixProblem } from './problem.ts';
import { say } from './sentences.ts';

/** Lights a match is tried under: a filament lamp and a common white LED. */
export const TEST_ILLUMINANTS = ['A', 'LED-B3'] as const satisfies readonly Illuminant[];

export interface Metamerism {
  readonly illuminant: Illuminant;
  /** CIEDE2000 under the test illuminant, after the correction. */
  readonly deltaE00: number;
  /** CIE 1976 difference of the same pair. */
  readonly deltaEab: number;
}

/** The index of a pair of reflectances on the grid, from a reference white to one test illuminant (same observer). */
export function metamerismIndex(
  target: ArrayLike<number>,
  sample: ArrayLike<number>,
  test: Illuminant,
  reference: WhiteName = DEFAULT_WHITE,
): Metamerism {
  const ref = tristimulusWeights(reference);
  const weights = tristimulusWeights(`${test}/${whiteParts(reference).observer}` as WhiteName);
  const targetRef = xyzOf(target, ref);
  const sampleRef = xyzOf(sample, ref);
  const sampleTest = xyzOf(sample, weights);
  if (!(sampleRef.X > 0 && sampleRef.Y > 0 && sampleRef.Z > 0)) {
    throw new MixProblem(say('no-metamerism'));
  }
  const one = labOf(xyzOf(target, weights));
  const two = labOf({
    X: (sampleTest.X * targetRef.X) / sampleRef.X,
    Y: (sampleTest.Y * targetRef.Y) / sampleRef.Y,
    Z: (sampleTest.Z * targetRef.Z) / sampleRef.Z,
    white: weights.white,
  });
  return {
    illuminant: test,
    deltaE00: ciede2000(one, two),
    deltaEab: Math.hypot(one.L - two.L, one.a - two.a, one.b - two.b),
  };
}

/** The index under each of the lights a match is tried under. */
export function metamerism(
  target: ArrayLike<number>,
  sample: ArrayLike<number>,
  reference: WhiteName = DEFAULT_WHITE,
): Metamerism[] {
  return TEST_ILLUMINANTS.map((test) => metamerismIndex(target, sample, test, reference));
}
