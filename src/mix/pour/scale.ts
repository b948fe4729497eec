import { MixProblem } from '../problem.ts';

/** What a scale and a hand can do, grams. */
export interface Scale {
  /** Smallest step the scale shows. */
  readonly resolution: number;
  /** Smallest amount that can be put down and read. @default ten steps of the scale */
  readonly smallestPour?: number;
}

/** Steps of a scale below which a weighing says little: common practice, no source. */
const STEPS_OF_A_POUR = 10;

/** A scale as whole steps. @throws MixProblem for numbers that are no scale's. */
export function scaleSteps(scale: Scale): { step: number; least: number; smallestPour: number } {
  const { resolution } = scale;
  const smallestPour = scale.smallestPour ?? STEPS_OF_A_POUR * resolution;
  if (!(resolution > 0 && Number.isFinite(resolution))) {
    throw new MixProblem(`A scale cannot show steps of ${resolution} g; give what it shows, such as 0.01.`);
  }
  if (!(smallestPour > 0 && Number.isFinite(smallestPour))) {
    throw new MixProblem(
      `The smallest pour is ${smallestPour} g; give grams above 0, such as ${STEPS_OF_A_POUR * resolution}.`,
    );
  }
  return { step: resolution, least: Math.max(1, Math.ceil(smallestPour / resolution - 1e-9)), smallestPour };
}
