import { MixProblem } from '../problem.ts';
import { say } from '../sentences.ts';

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
    throw new MixProblem(say('scale-steps', { grams: resolution }));
  }
  if (!(smallestPour > 0 && Number.isFinite(smallestPour))) {
    throw new MixProblem(say('smallest-pour', { grams: smallestPour, such: STEPS_OF_A_POUR * resolution }));
  }
  return { step: resolution, least: Math.max(1, Math.ceil(smallestPour / resolution - 1e-9)), smallestPour };
}

/** Whether an amount of mix can be poured at all on a scale. @throws MixProblem for numbers that are no scale's. */
export function canPour(grams: number, scale: Scale): boolean {
  return grams >= scaleSteps(scale).smallestPour && Number.isFinite(grams);
}
