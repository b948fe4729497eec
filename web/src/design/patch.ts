/** From a reading or a prediction to what a drawdown shows and says. */
import type { ColourAnswer } from '../../../server/api/words.ts';
import { DEFAULT_WHITE } from '../../../src/colour/illuminant.ts';
import { adaptXyz } from '../../../src/colour/adaptation.ts';
import { type DisplayColour, displayColour } from '../../../src/colour/display.ts';
import { type Lab, chroma, xyzFromLab } from '../../../src/colour/lab.ts';
import { leanWord } from '../../../src/colour/lean.ts';
import { valueOfLuminance } from '../../../src/colour/munsell-value.ts';
import { num } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';

/** A colour to draw. `value` is Munsell value where it was computed from a spectrum; else it is taken from the Lab. */
export interface Patch {
  readonly lab: Lab;
  readonly value: number;
}

/** A Lab as a patch. Its Y is carried to illuminant C, 2 degrees, by adaptation: good to about 0.1 of a value. */
export function patchOfLab(lab: Lab): Patch {
  return { lab, value: valueOfLuminance(adaptXyz(xyzFromLab(lab), 'C/2deg').Y) };
}

/**
 * A Lab with no spectrum, beside a patch whose spectrum is known. What adaptation misses is nearly the same for two
 * colours that look alike, so it is taken off: equal colours get equal values, and the known one keeps its own.
 */
export function patchBeside(lab: Lab, known: Patch): Patch {
  return { lab, value: patchOfLab(lab).value + known.value - patchOfLab(known.lab).value };
}

/** A neutral of a wanted value, for drawings that have no reading. */
export function neutralPatch(L: number): Patch {
  return patchOfLab({ L, a: 0, b: 0, white: DEFAULT_WHITE });
}

/** A colour as the bench's server states it. */
export function patchOfColour(colour: ColourAnswer): Patch {
  const { L, a, b } = colour.Lab;
  return {
    lab: { L, a, b, white: `${colour.white.illuminant}/${colour.white.observer}` },
    value: colour.value,
  };
}

const wide = typeof matchMedia === 'function' ? matchMedia('(color-gamut: p3)') : { matches: false };

/** What this screen can do with a colour. */
export function onThisScreen(lab: Lab): { readonly css: string; readonly shown: boolean } {
  const colour: DisplayColour = displayColour(lab);
  return wide.matches ? { css: colour.p3, shown: colour.inP3 } : { css: colour.srgb, shown: colour.inSrgb };
}

/** "value 3.2, warm, chroma 18": the words under a patch and its name for a screen reader. */
export function patchName({ lab, value }: Patch): string {
  const t = partsWords();
  return `${t.value} ${num(value, 1)}, ${t.lean[leanWord(lab)]}, ${t.chroma} ${num(chroma(lab), 0)}`;
}
