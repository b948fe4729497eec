import { ciede2000 } from '../../colour/ciede2000.ts';
import { GRID_SIZE } from '../../colour/grid.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { LabRegion } from '../../fit/lab-region.ts';
import { predictWithCovariance } from '../../fit/predict.ts';
import { ProfileProblem } from '../problem.ts';
import { say } from '../sentences.ts';
import { WHAT_TO_MEASURE } from './bridge-type.ts';
import type { BridgedTubes } from './bridged-tubes.ts';
import { followingFrame, reexpressed } from './reexpress.ts';

/** Two readings of one white differ by less than this, or than their doubt, CIEDE2000. Common practice, no source. */
const SAME_WHITE = 1.5;

/** Doubt in k2 and crowding before anything is read (the fit's priors). */
const [USUAL_K2, USUAL_CROWDING] = [0.035, 0.1];

/**
 * Tubes of two palettes on one white, in the first one's frame, with covariance columns of one set: the first palette's,
 * which the second's tubes follow where they move the frame, then the second's.
 * @throws ProfileProblem where the whites are plainly two.
 */
export function oneWhiteTubes(a: MixingPalette, b: MixingPalette): BridgedTubes {
  refuseOtherWhite(a, b);
  const zeros = (n: number): Float64Array[] =>
    Array.from({ length: n }, () => new Float64Array(2 * GRID_SIZE));
  const there = reexpressed(b, { surface: a.surface, crowding: a.crowding ?? 0 });
  const following = followingFrame(there, a);
  const [widthA, widthB] = [a.tubes[0]!.shared.length, b.tubes[0]!.shared.length];
  return {
    first: a.tubes.map((t) => ({ ...t, shared: [...t.shared, ...zeros(widthB)] })),
    second: there.tubes.map((t, i) => ({
      ...t,
      shared: [...zeros(widthA).map((none, j) => following[i]!.get(j) ?? none), ...t.shared],
    })),
  };
}

/** The same in the frame of either: the columns of the one that lends it come first. */
export function inFrameOf(ofFirst: boolean, a: MixingPalette, b: MixingPalette): BridgedTubes {
  if (ofFirst) return oneWhiteTubes(a, b);
  const { first, second } = oneWhiteTubes(b, a);
  return { first: second, second: first };
}

/** Whether the surface and crowding of `a` are surer than those of `b`; a frame that states no doubt is surer than none. */
export function surerFrame(a: MixingPalette, b: MixingPalette): boolean {
  return frameVariance(a) < frameVariance(b);
}

/** Variance of k2 and of crowding, each in units of what is usual of it. */
function frameVariance({ frameDoubt }: MixingPalette): number {
  if (!frameDoubt) return Infinity;
  const square = (v: Float64Array | undefined): number => v?.reduce((sum, x) => sum + x * x, 0) ?? 0;
  return square(frameDoubt.k2) / USUAL_K2 ** 2 + square(frameDoubt.crowding) / USUAL_CROWDING ** 2;
}

function refuseOtherWhite(a: MixingPalette, b: MixingPalette): void {
  if (a.white !== b.white) {
    throw new ProfileProblem(
      say('different-whites', { first: a.white, second: b.white, what: WHAT_TO_MEASURE }),
      'white',
    );
  }
  const [one, two] = [a, b].map((p) => predictWithCovariance(p, { [p.white]: 1 }).labRegion) as [
    LabRegion,
    LabRegion,
  ];
  const apart = ciede2000(one.lab, two.lab);
  // A white read as XYZ is doubtful under another light than it was read for.
  if (apart > Math.max(SAME_WHITE, Math.hypot(one.radius, two.radius))) {
    throw new ProfileProblem(
      say('same-name-whites', { white: a.white, apart: apart.toFixed(1), what: WHAT_TO_MEASURE }),
      'white',
    );
  }
}
