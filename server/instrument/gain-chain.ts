import type { KeptGainStep } from '../store/head-tests.ts';

/**
 * Basic counts at gain `to` over those at gain `from`, per channel, along measured steps in either direction; ones for
 * the same gain. Undefined where no chain of measured steps leads there: the nominal gain is not to be trusted.
 */
export function gainChain(
  steps: readonly KeptGainStep[],
  from: number,
  to: number,
  channels: readonly string[],
): Float64Array | undefined {
  const usable = steps.filter((s) => s.channels.join() === channels.join());
  const reached = new Map([[from, new Float64Array(channels.length).fill(1)]]);
  const open = [from];
  for (let gain = open.shift(); gain !== undefined && !reached.has(to); gain = open.shift()) {
    const here = reached.get(gain)!;
    for (const { fromGain, toGain, ratios } of usable) {
      const next = fromGain === gain ? toGain : toGain === gain ? fromGain : undefined;
      if (next === undefined || reached.has(next)) continue;
      reached.set(
        next,
        here.map((r, i) => (fromGain === gain ? r * ratios[i]! : r / ratios[i]!)),
      );
      open.push(next);
    }
  }
  return reached.get(to);
}
