import type { WhiteName } from '../../colour/illuminant.ts';
import type { Lab } from '../../colour/lab.ts';
import { xyzFromLab } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { MixProblem } from '../problem.ts';
import { say } from '../sentences.ts';

/** A glossy white at 45/0 reads a little over the perfect diffuser; nothing painted reads more than this L*. */
const LIGHTEST_L = 102;
/** Slack on the edge of the spectrum locus, in chromaticity: the locus is sampled every 10 nm. */
const EDGE = 2e-3;

type Point = readonly [number, number];
const loci = new Map<WhiteName, Point[]>();

const cross = (o: Point, a: Point, b: Point): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Convex outline of the chromaticities of single wavelengths, anticlockwise (A. M. Andrew's monotone chain, 1979). */
function locus(white: WhiteName): Point[] {
  const known = loci.get(white);
  if (known) return known;
  const { x, y, z } = tristimulusWeights(white);
  const points: Point[] = [];
  x.forEach((X, i) => {
    const sum = X + y[i]! + z[i]!;
    if (sum > 1e-3 && X >= 0 && y[i]! >= 0 && z[i]! >= 0) points.push([X / sum, y[i]! / sum]);
  });
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of list) {
      while (out.length > 1 && cross(out.at(-2)!, out.at(-1)!, p) <= 0) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  const outline = [...half(points), ...half(points.toReversed())];
  loci.set(white, outline);
  return outline;
}

/**
 * Refuses a Lab that no surface can have under its own white: not a number, lightness out of range, or a chromaticity
 * outside the spectrum locus.
 * @throws MixProblem saying which.
 */
export function refuseImpossibleColour(lab: Lab): void {
  const said = say('lab', { L: lab.L, a: lab.a, b: lab.b, white: lab.white });
  if (![lab.L, lab.a, lab.b].every(Number.isFinite)) {
    throw new MixProblem(say('wanted-not-a-number', { lab: said }));
  }
  if (lab.L < 0 || lab.L > LIGHTEST_L) {
    throw new MixProblem(say('wanted-lightness', { lab: said }));
  }
  const { X, Y, Z } = xyzFromLab(lab);
  const sum = X + Y + Z;
  if (lab.L === 0 && lab.a === 0 && lab.b === 0) return;
  const p: Point = [X / sum, Y / sum];
  const outline = locus(lab.white);
  const outside =
    !(sum > 0) ||
    outline.some((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      return cross(a, b, p) < -EDGE * Math.hypot(b[0] - a[0], b[1] - a[1]);
    });
  if (outside) {
    throw new MixProblem(say('wanted-outside', { lab: said }));
  }
}
