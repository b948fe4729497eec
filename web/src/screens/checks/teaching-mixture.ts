import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { WorkBench } from '../../workers/work-bench.ts';

export type Masses = Readonly<Record<string, number>>;

/** Grams of a check's mixture: two paints, and white enough to show their colour. */
const PAINT_GRAMS = 1;
const WHITE_GRAMS = 2;

const nameOf = (masses: Masses): string =>
  Object.keys(masses)
    .filter((id) => masses[id]! > 0)
    .toSorted()
    .join('|');

/**
 * The mixture of two tubes and white whose prediction is least sure, among those not checked yet: reading it teaches
 * most. Undefined where every pair was checked or there are fewer than two tubes beside the white.
 */
export async function teachingMixture(
  profile: PaletteProfile,
  checked: readonly Masses[],
  bench: WorkBench,
  signal: AbortSignal,
): Promise<Masses | undefined> {
  const known = new Set(checked.map(nameOf));
  const ids = profile.tubes.map((t) => t.id).filter((id) => id !== profile.white);
  const pairs = ids.flatMap((one, i) =>
    ids.slice(i + 1).map((two) => ({ [one]: PAINT_GRAMS, [two]: PAINT_GRAMS, [profile.white]: WHITE_GRAMS })),
  );
  let best: { masses: Masses; radius: number } | undefined;
  for (const masses of pairs.filter((m) => !known.has(nameOf(m)))) {
    const { interval } = await bench.run('predict', { masses }, { signal });
    if (!best || interval.radius95 > best.radius) best = { masses, radius: interval.radius95 };
  }
  return best?.masses;
}
