import type { Advice, Fall } from './advice.ts';

/** One measurement and what it buys, in words: the part of the range it helps most is named. */
export function adviceSentence(advice: Omit<Advice, 'sentence'>, id: string, white: string): string {
  const places: readonly (readonly [string, Fall | undefined])[] = [
    ['in darks', advice.darks],
    ['in middle values', advice.middles],
    ['in lights', advice.lights],
  ];
  const fall = (f: Fall | undefined): number => (f ? f.before - f.after : -Infinity);
  const [where, best] = places.reduce((a, b) => (fall(b[1]) > fall(a[1]) ? b : a));
  const { before, after } = best ?? advice.all;
  const what = phrase(advice.measurement, id, white);
  const digits = before - after < 0.15 ? 2 : 1;
  return `${what}: takes the doubt ${where} from ${before.toFixed(digits)} to ${after.toFixed(digits)} CIEDE2000.`;
}

function phrase({ kind, masses }: Advice['measurement'], id: string, white: string): string {
  switch (kind) {
    case 'repeat':
      return `Read the masstone of ${id} at three more spots`;
    case 'drawdown':
      return `Draw the masstone of ${id} down once more and read it`;
    case 'tint':
      return `Add a tint of ${id}, 1:${Math.round(masses[white]! / masses[id]!)} with ${white}`;
    case 'check': {
      const other = Object.keys(masses).find((m) => m !== id)!;
      return `Mix ${id} 1:1 with ${other} and read it as a swatch`;
    }
  }
}
