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

/** Every choice of `count` of the ids. */
function choices(ids: readonly string[], count: number): string[][] {
  if (count === 0) return [[]];
  return ids.flatMap((id, i) => choices(ids.slice(i + 1), count - 1).map((rest) => [id, ...rest]));
}

/**
 * The mixture of two tubes and white whose prediction is least sure, among those not checked yet (of three, once every
 * pair was): reading it teaches most. Undefined where nothing is left or the palette is too small.
 */
export async function teachingMixture(
  profile: PaletteProfile,
  checked: readonly Masses[],
  bench: WorkBench,
  signal: AbortSignal,
): Promise<Masses | undefined> {
  const known = new Set(checked.map(nameOf));
  const ids = profile.tubes.map((t) => t.id).filter((id) => id !== profile.white);
  for (const count of [2, 3]) {
    const fresh = choices(ids, count)
      .map((chosen): Masses => ({
        ...Object.fromEntries(chosen.map((id) => [id, PAINT_GRAMS])),
        [profile.white]: WHITE_GRAMS,
      }))
      .filter((masses) => !known.has(nameOf(masses)));
    let best: { masses: Masses; radius: number } | undefined;
    for (const masses of fresh) {
      const { interval } = await bench.run('predict', { masses }, { signal });
      if (!best || interval.radius95 > best.radius) best = { masses, radius: interval.radius95 };
    }
    if (best) return best.masses;
  }
  return undefined;
}
