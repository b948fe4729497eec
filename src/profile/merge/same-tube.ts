/** One tube in two profiles: its two fits as one, and one evidence that says what both rest on. */
import { type CombinedTube, combineTubes, commonPrior } from '../../fit/combine.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { ProfileProblem } from '../problem.ts';
import type { ProfileTube, TubeEvidence } from '../schema.ts';
import { say } from '../sentences.ts';

/** Fits that disagree by this many times their doubt are of two tubes, or one was read wrong. Our choice. */
const TWO_TUBES = 5;
/** From here on the disagreement is said. Our choice. */
const DISAGREE = 1.3;

/** From the most to the least that a reading tells of a tube. */
const KINDS = ['spectral', 'bands', 'tristimulus'] as const;

export interface SameTube {
  readonly tube: ProfileTube;
  readonly constants: TubeConstants;
  /** One sentence. */
  readonly words: string;
}

/**
 * @param first, second the tube as the two profiles have it; @param one, two its constants in one frame, with columns of
 * one set.
 * @throws ProfileProblem where the pigments or the fits say that these are two tubes.
 */
export function sameTube(
  first: ProfileTube,
  second: ProfileTube,
  one: TubeConstants,
  two: TubeConstants,
): SameTube {
  const named = first.pigments.length > 0 && second.pigments.length > 0;
  if (named && !first.pigments.some((p) => second.pigments.includes(p))) {
    const [a, b] = [first.pigments.join(' '), second.pigments.join(' ')];
    throw new ProfileProblem(say('two-pigments', { tube: first.id, first: a, second: b }), 'tubes');
  }
  const [a, b] = [first.evidence?.readings, second.evidence?.readings];
  const combined = combineTubes(one, two, a && b ? commonPrior(a, b) : undefined);
  if (combined.widened > TWO_TUBES) {
    throw new ProfileProblem(
      say('two-tubes', { tube: first.id, times: combined.widened.toFixed(1) }),
      'tubes',
    );
  }
  const words = wordsFor(first.id, combined, first.evidence, second.evidence);
  const evidence = evidenceOf(first.evidence, second.evidence, words);
  return {
    tube: {
      ...second,
      ...first,
      pigments: [...new Set([...first.pigments, ...second.pigments])],
      ...(evidence ? { evidence } : {}),
    },
    constants: combined.constants,
    words,
  };
}

const READ = {
  spectral: say('read-as-spectra'),
  bands: say('read-in-bands'),
  tristimulus: say('read-as-xyz'),
} as const;

function wordsFor(tube: string, { widened }: CombinedTube, a?: TubeEvidence, b?: TubeEvidence): string {
  const read = (e: TubeEvidence | undefined) => (e ? READ[e.readings] : say('read-somehow'));
  const how = widened > DISAGREE ? say('fits-disagree', { times: widened.toFixed(1) }) : say('fits-agree');
  return say('combined', { tube, first: read(a), second: read(b), how });
}

function evidenceOf(
  a: TubeEvidence | undefined,
  b: TubeEvidence | undefined,
  words: string,
): TubeEvidence | undefined {
  if (!a || !b) return a ?? b;
  const [better, other] = KINDS.indexOf(a.readings) <= KINDS.indexOf(b.readings) ? [a, b] : [b, a];
  const taken = new Set(better.rungs.map((r) => r.id));
  const [n, m] = [better.rungs.length, other.rungs.length];
  return {
    ...better,
    rungs: [
      ...better.rungs,
      ...other.rungs.map((r) => ({ ...r, id: taken.has(r.id) ? `${r.id} (${other.readings})` : r.id })),
    ],
    reducedChiSquare:
      n + m > 0
        ? (n * better.reducedChiSquare + m * other.reducedChiSquare) / (n + m)
        : better.reducedChiSquare,
    status: better.status === 'stopped' ? 'stopped' : other.status,
    iterations: better.iterations + other.iterations,
    trust: words,
    warnings: [...new Set([...better.warnings, ...other.warnings])],
    combined: [a, b].map(({ readings, rungs, trust }) => ({ readings, rungs: rungs.length, trust })),
  };
}
