import { say } from './sentences.ts';

/** Readings needed to bring the standard error of their mean to the wanted one; `ratio` is scatter over wanted error. */
export function neededReadings(ratio: number, soFar: number, most: number): number {
  if (soFar < 2) return 0;
  return Math.min(most, Math.ceil(ratio * ratio - 1e-9));
}

/** The verdict on repeats, in one sentence. */
export function repeatsSentence(v: {
  readonly kept: number;
  readonly sentBack: number;
  readonly more: number;
  readonly wanted: number;
  readonly scatter: number;
  readonly split: boolean;
}): string {
  const readings = (n: number): string =>
    say('readings', { count: n, readings: n === 1 ? 'reading' : 'readings' });
  if (v.kept + v.sentBack === 0) return say('none-yet', { wanted: v.wanted });
  if (v.split) {
    return say('camps', { readings: readings(v.kept), more: v.more });
  }
  const back = v.sentBack > 0 ? say('sent-back-count', { count: v.sentBack }) : '';
  const have = say('kept', { readings: readings(v.kept), back });
  if (v.more === 0) return say('agree', { have });
  if (v.kept >= v.wanted) {
    return say('scatter', {
      have,
      times: v.scatter.toFixed(1),
      more: v.more,
      spots: v.more === 1 ? 'spot' : 'spots',
    });
  }
  return say('more', { have, more: v.more, spots: v.more === 1 ? 'spot' : 'spots' });
}
