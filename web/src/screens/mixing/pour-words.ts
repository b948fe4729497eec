import type { Masses, Pour, PreTint } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { mixingWords } from '../../text/mixing.ts';
import { grams } from '../../text/numbers.ts';
import { said } from '../../text/said.ts';

/** A tube's label, or its id where the profile does not know it. */
export function labelIn(profile: PaletteProfile | undefined, id: string): string {
  return profile?.tubes.find((tube) => tube.id === id)?.label ?? id;
}

/** One thing to weigh: a tube, or a pre-tint of one. */
export interface Weighing {
  readonly what: string;
  readonly grams: number;
}

/**
 * What is weighed for a pour as it is made, in the order it is put down: the palest on the knife first, the strong ones
 * and the pre-tints last.
 */
export function weighings(pour: Pour, profile: PaletteProfile | undefined): readonly Weighing[] {
  const { order, tints } = pour.preTint ?? { order: pour.order, tints: [] };
  return [
    ...order.map(({ tube, grams: g }) => ({ what: labelIn(profile, tube), grams: g })),
    ...tints.map(({ strong, pour: g }) => ({
      what: mixingWords().thePreTint(labelIn(profile, strong)),
      grams: g,
    })),
  ];
}

/** "First mix 0.05 g red with 0.20 g white": what is let down before the rest. */
export function firstMix(tint: PreTint, profile: PaletteProfile | undefined, resolution: number): string {
  const { strong, light, make } = tint;
  const weigh = (id: string): string => `${grams(make[id] ?? 0, resolution)} ${labelIn(profile, id)}`;
  return mixingWords().firstMix(weigh(strong), weigh(light));
}

/** Every pre-tint of a pour, to be made first. */
export function firstMixes(
  pour: Pour | undefined,
  profile: PaletteProfile | undefined,
  resolution: number,
): string[] {
  return (pour?.preTint?.tints ?? []).map((tint) => firstMix(tint, profile, resolution));
}

/** What has to be said of a pour besides: what was left out that no pre-tint helps. */
export function pourNotes(pour: Pour): string[] {
  return pour.noPreTint.map(said);
}

/** Grams of each tube to squeeze out for a pour as it is made: of a pre-tint, all that is mixed. */
export function squeezed(pour: Pour): Masses {
  if (!pour.preTint) return pour.masses;
  const out: Record<string, number> = { ...pour.preTint.masses };
  for (const { make } of pour.preTint.tints)
    for (const [id, g] of Object.entries(make)) out[id] = (out[id] ?? 0) + g;
  return out;
}
