/** What is usual in a set before any evidence, as the ln of a size: it weighs as so many tubes. */
export interface UsualSize {
  readonly log: number;
  readonly weight: number;
  /** ln spread of the tubes about what is usual. */
  readonly spread: number;
  /** How often tubes and what is usual for them are settled in turn. */
  readonly passes: number;
}

/**
 * One size per block of a set, each where its own evidence and the set's usual size together are least against it; what
 * is usual is the mean of the blocks that hold a tube. A tube with too few readings to tell takes what is usual.
 * @param logs ln of the sizes tried
 * @param curves minus ln probability at each of them, block by block
 */
export function sizesAboutUsual(
  logs: readonly number[],
  curves: readonly (readonly number[])[],
  informs: (b: number) => boolean,
  usual: UsualSize,
): { logs: number[]; centre: number } {
  let centre = usual.log;
  let found: number[] = [];
  for (let pass = 0; pass < usual.passes; pass++) {
    found = curves.map((curve) => lowest(logs, curve, centre, usual.spread));
    const informed = found.filter((_, b) => informs(b));
    const sum = informed.reduce((a, v) => a + v, usual.weight * usual.log);
    centre = sum / (informed.length + usual.weight);
  }
  return { logs: found, centre };
}

/** The ln size where evidence and prior are least: a parabola through the best of the sizes tried. */
function lowest(logs: readonly number[], curve: readonly number[], centre: number, spread: number): number {
  const total = curve.map((v, i) => v + ((logs[i]! - centre) / spread) ** 2 / 2);
  const i = Math.min(Math.max(total.indexOf(Math.min(...total)), 1), total.length - 2);
  const [a, m, c] = [total[i - 1]!, total[i]!, total[i + 1]!];
  const bend = a - 2 * m + c;
  if (!Number.isFinite(bend)) return logs[total.indexOf(Math.min(...total))]!;
  const step = logs[i + 1]! - logs[i]!;
  const shift = bend > 0 ? (0.5 * (a - c)) / bend : 0;
  return logs[i]! + step * Math.max(-1, Math.min(1, shift));
}
