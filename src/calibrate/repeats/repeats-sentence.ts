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
  const readings = (n: number): string => `${n} ${n === 1 ? 'reading' : 'readings'}`;
  if (v.kept + v.sentBack === 0) return `No reading yet; take ${v.wanted}.`;
  if (v.split) {
    return `The ${readings(v.kept)} fall into camps and none can be called the odd one out; read ${v.more} more spots.`;
  }
  const back = v.sentBack > 0 ? `, ${v.sentBack} sent back` : '';
  const have = `${readings(v.kept)} kept${back}`;
  if (v.more === 0) return `${have}: enough, they agree.`;
  if (v.kept >= v.wanted) {
    return `${have}, but they scatter ${v.scatter.toFixed(1)} times the usual; read ${v.more} more ${v.more === 1 ? 'spot' : 'spots'}.`;
  }
  return `${have}; read ${v.more} more ${v.more === 1 ? 'spot' : 'spots'}.`;
}
