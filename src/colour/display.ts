/**
 * A colour for a screen: adapted to the display's D65 white, gamut-mapped in OKLCH by the method of CSS Color 4
 * section 13.2 (culori's toGamut), with a plain answer to "can this screen show it?".
 */
import {
  type Color,
  displayable,
  inGamut,
  modeLab65,
  modeOklab,
  modeOklch,
  modeP3,
  modeRgb,
  modeXyz65,
  toGamut,
  useMode,
} from 'culori/fn';
import { adaptXyz } from './adaptation.ts';
import { type Lab, xyzFromLab } from './lab.ts';

for (const mode of [modeXyz65, modeLab65, modeRgb, modeP3, modeOklab, modeOklch]) useMode(mode);

export interface DisplayColour {
  /** For a wide-gamut screen: `color(display-p3 r g b)`, mapped into P3 where needed. */
  readonly p3: string;
  /** For any screen: `rgb(r g b)` in per cent, mapped into sRGB where needed. */
  readonly srgb: string;
  /** True when an sRGB screen shows the colour itself, unmapped. */
  readonly inSrgb: boolean;
  /** True when a Display P3 screen shows the colour itself, unmapped. */
  readonly inP3: boolean;
}

const p3Gamut = inGamut('p3');
const toP3 = toGamut('p3', 'oklch');
const toRgb = toGamut('rgb', 'oklch');
/** Our D65 white and the display standard's (0.3127, 0.3290) differ in the fourth digit; a colour on the edge is inside. */
const EDGE = 5e-4;

/** CSS colours for a Lab under any of the program's whites. */
export function displayColour(lab: Lab): DisplayColour {
  const { X, Y, Z } = adaptXyz(xyzFromLab(lab), 'D65/2deg');
  const colour: Color = { mode: 'xyz65', x: X / 100, y: Y / 100, z: Z / 100 };
  const p3 = toP3(colour);
  const rgb = toRgb(colour);
  const pc = (v: number): string => (100 * Math.min(1, Math.max(0, v))).toFixed(2);
  return {
    p3: `color(display-p3 ${pc(p3.r)}% ${pc(p3.g)}% ${pc(p3.b)}%)`,
    srgb: `rgb(${pc(rgb.r)}% ${pc(rgb.g)}% ${pc(rgb.b)}%)`,
    inSrgb: displayable(shrink(colour)),
    inP3: p3Gamut(shrink(colour)),
  };
}

function shrink(c: Color & { mode: 'xyz65' }): Color {
  const k = 1 - EDGE;
  return { ...c, x: c.x * k + EDGE * 0.2, y: c.y * k + EDGE * 0.2, z: c.z * k + EDGE * 0.2 };
}
