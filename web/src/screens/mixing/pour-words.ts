import type { Pour } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { mixingWords } from '../../text/mixing.ts';
import { grams, num } from '../../text/numbers.ts';
import type { MadePreTint } from './mix-state.ts';

/** A tube's label, or its id where the profile does not know it. */
export function labelIn(profile: PaletteProfile | undefined, id: string): string {
  return profile?.tubes.find((tube) => tube.id === id)?.label ?? id;
}

/** Pours in the order they are put down: the palest on the knife first, the strong ones last. */
export function inOrder(pour: Pour): readonly (readonly [id: string, grams: number])[] {
  return pour.order.map(({ tube, grams: g }) => [tube, g] as const);
}

/** "First mix 0.05 g red with 0.20 g white": what is let down before the rest. */
export function firstMix(tint: MadePreTint, profile: PaletteProfile | undefined, resolution: number): string {
  const { strong, light, make } = tint;
  const weigh = (id: string): string => `${grams(make[id] ?? 0, resolution)} ${labelIn(profile, id)}`;
  return mixingWords().firstMix(weigh(strong), weigh(light));
}

/** What has to be said of a pour: what was left out, and what to let down first. */
export function pourNotes(pour: Pour, profile: PaletteProfile | undefined, resolution: number): string[] {
  const t = mixingWords();
  const { leftOut, preTint } = pour;
  const label = (id: string): string => labelIn(profile, id);
  return [
    ...(leftOut.length > 0 ? [t.leftOut(leftOut.map(label).join(', '))] : []),
    ...(preTint
      ? [
          t.preTint(
            label(preTint.strong),
            String(preTint.parts),
            label(preTint.light),
            grams(preTint.pour, resolution),
            num(preTint.deltaE00, 1),
          ),
        ]
      : []),
  ];
}
