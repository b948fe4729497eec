/** How well a profile foretold a document's checks, CIEDE2000. */
export interface CheckSummary {
  readonly count: number;
  readonly meanDeltaE00: number;
  readonly medianDeltaE00: number;
  /** Nine in ten checks are at most this. */
  readonly p90DeltaE00: number;
  readonly maxDeltaE00: number;
  /** Share of checks inside their 95 % region, 0..1. */
  readonly inside95Share: number;
  /** Median of the regions' radius: sharpness, to be read beside the share inside. */
  readonly medianRegion: number;
}

interface Checked {
  readonly deltaE00: number;
  readonly inside95: boolean;
  readonly region: number;
}

export function summaryOf(checks: readonly Checked[]): CheckSummary {
  const differences = checks.map((c) => c.deltaE00).toSorted((a, b) => a - b);
  const regions = checks.map((c) => c.region).toSorted((a, b) => a - b);
  const count = checks.length;
  return {
    count,
    meanDeltaE00: differences.reduce((a, b) => a + b, 0) / count,
    medianDeltaE00: median(differences),
    p90DeltaE00: differences[Math.ceil(0.9 * count) - 1]!,
    maxDeltaE00: differences[count - 1]!,
    inside95Share: checks.filter((c) => c.inside95).length / count,
    medianRegion: median(regions),
  };
}

function median(sorted: readonly number[]): number {
  const n = sorted.length;
  return n % 2 ? sorted[(n - 1) / 2]! : (sorted[n / 2 - 1]! + sorted[n / 2]!) / 2;
}
