import type { Answer } from '../../api/call.ts';

/** A rung as the plan or the ladder states it. */
export type PlannedRung = Answer<'planLadder'>['rungs'][number];

/** Relative standard deviation of paint : white, from that of the paint's share x: d(x/(1-x)) = dx/(1-x)^2. */
export function ratioSigma(rung: Pick<PlannedRung, 'share' | 'shareRelativeSigma'>): number {
  return rung.shareRelativeSigma / Math.max(1e-9, 1 - rung.share);
}
