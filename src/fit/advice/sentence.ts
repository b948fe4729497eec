import { type MixingPalette, labelOf } from '../palette.ts';
import type { Advice, Fall } from './advice.ts';
import { say } from '../sentences.ts';

/** One measurement and what it buys, in words: the part of the range it helps most is named. */
export function adviceSentence(
  advice: Omit<Advice, 'sentence'>,
  id: string,
  palette: Pick<MixingPalette, 'tubes' | 'white'>,
): string {
  const places: readonly (readonly [string, Fall | undefined])[] = [
    [say('in-darks'), advice.darks],
    [say('in-middles'), advice.middles],
    [say('in-lights'), advice.lights],
  ];
  const fall = (f: Fall | undefined): number => (f ? f.before - f.after : -Infinity);
  const [where, best] = places.reduce((a, b) => (fall(b[1]) > fall(a[1]) ? b : a));
  const { before, after } = best ?? advice.all;
  const what = phrase(advice.measurement, id, palette);
  const digits = before - after < 0.15 ? 2 : 1;
  return say('advice', { what, where, before: before.toFixed(digits), after: after.toFixed(digits) });
}

function phrase(
  { kind, masses }: Advice['measurement'],
  id: string,
  palette: Pick<MixingPalette, 'tubes' | 'white'>,
): string {
  const { white } = palette;
  const tube = labelOf(palette, id);
  switch (kind) {
    case 'repeat':
      return say('advice-repeat', { tube });
    case 'drawdown':
      return say('advice-drawdown', { tube });
    case 'tint':
      return say('advice-tint', {
        tube,
        parts: Math.round(masses[white]! / masses[id]!),
        white: labelOf(palette, white),
      });
    case 'check': {
      const other = Object.keys(masses).find((m) => m !== id)!;
      return say('advice-check', { tube, other: labelOf(palette, other) });
    }
  }
}
