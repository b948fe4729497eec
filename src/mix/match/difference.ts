import { ciede2000 } from '../../colour/ciede2000.ts';
import { adaptXyz } from '../../colour/adaptation.ts';
import { type Lab, chroma, xyzFromLab } from '../../colour/lab.ts';
import { lean } from '../../colour/lean.ts';
import { valueOfLuminance } from '../../colour/munsell-value.ts';
import { say } from '../sentences.ts';

/** How a mix differs from what was wanted, in a painter's parts. All are mix minus wanted. */
export interface ColourSplit {
  readonly deltaE00: number;
  /** Munsell value. */
  readonly value: number;
  /** CIELAB chroma. */
  readonly chroma: number;
  /** CIELAB hue difference, 2 sqrt(C1 C2) sin(dh/2), signed: anticlockwise is positive. */
  readonly hue: number;
  /** CIELAB units; above zero the mix is too warm. */
  readonly lean: number;
  /** "value kept, too cool by 6". */
  readonly sentence: string;
}

/** Parts smaller than these are called kept. Our choice: about what one can see side by side. */
export const VALUE_KEPT = 0.05;
const COLOUR_KEPT = 0.75;
/** Below this chroma a colour has a lean but no hue to speak of. Our choice. */
const NEARLY_NEUTRAL = 5;

const RAD = Math.PI / 180;

/** Munsell value of a Lab: its Y taken over to C/2deg by adaptation, for a Lab alone does not hold it exactly. */
export function valueOfLab(lab: Lab): number {
  return valueOfLuminance(adaptXyz(xyzFromLab(lab), 'C/2deg').Y);
}

const figure = (v: number): string => {
  const size = Math.abs(v);
  return size >= 9.5 ? size.toFixed(0) : size.toFixed(1).replace(/\.0$/, '');
};

/** A step in the a*, b* plane in words, by the poles it points to: warm at 60 degrees, green at 150, and across. */
function directionWords(da: number, db: number): string | undefined {
  const warm = lean({ a: da, b: db });
  const green = lean({ a: db, b: -da });
  const main = Math.abs(warm) >= Math.abs(green) ? warm : green;
  if (Math.abs(main) < COLOUR_KEPT) return undefined;
  const word = main === warm ? (warm > 0 ? 'warm' : 'cool') : green > 0 ? 'green' : 'rose';
  return say('too-far', { way: word, by: figure(main) });
}

function hueStep(wanted: Lab, mix: Lab): { size: number; words: string | undefined } {
  const hw = Math.atan2(wanted.b, wanted.a);
  const hm = Math.atan2(mix.b, mix.a);
  const half = Math.atan2(Math.sin(hm - hw), Math.cos(hm - hw)) / 2;
  const size = 2 * Math.sqrt(chroma(wanted) * chroma(mix)) * Math.sin(half);
  const across = hw + half + Math.sign(size || 1) * 90 * RAD;
  return {
    size,
    words: directionWords(Math.abs(size) * Math.cos(across), Math.abs(size) * Math.sin(across)),
  };
}

/**
 * Splits a difference. `valueStep` is the difference of Munsell value where it is known better than from the two Labs
 * (a mix has a spectrum).
 */
export function splitDifference(wanted: Lab, mix: Lab, valueStep?: number): ColourSplit {
  const value = valueStep ?? valueOfLab(mix) - valueOfLab(wanted);
  const C = chroma(mix) - chroma(wanted);
  const { size: hue, words } = hueStep(wanted, mix);
  const parts: string[] = [];
  parts.push(
    Math.abs(value) < VALUE_KEPT
      ? say('value-kept')
      : say('value-off', { way: value > 0 ? 'light' : 'dark', by: Math.abs(value).toFixed(2) }),
  );
  if (chroma(wanted) < NEARLY_NEUTRAL) {
    const lead = directionWords(mix.a - wanted.a, mix.b - wanted.b);
    if (lead) parts.push(lead);
  } else {
    if (words) parts.push(words);
    if (Math.abs(C) >= COLOUR_KEPT)
      parts.push(say('too-strong', { way: C > 0 ? 'strong' : 'weak', by: figure(C) }));
  }
  return {
    deltaE00: ciede2000(wanted, mix),
    value,
    chroma: C,
    hue,
    lean: lean(mix) - lean(wanted),
    sentence: parts.length === 1 && parts[0] === say('value-kept') ? say('all-kept') : parts.join(', '),
  };
}
