/**
 * A colour for a screen: adapted to the display's D65 white, gamut-mapped in OKLCH by the method of CSS Color 4
 * section 13.2, with a plain answer to "can this screen show it?".
 */
import { adaptXyz } from './adaptation.ts';
import { type Gamut, inGamut, intoGamut } from './css-gamut.ts';
import { type Lab, xyzFromLab } from './lab.ts';

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

/** Our D65 white and the display standard's (0.3127, 0.3290) differ in the fourth digit; a colour on the edge is inside. */
const EDGE = 5e-4;

/** CSS colours for a Lab under any of the program's whites. */
export function displayColour(lab: Lab): DisplayColour {
  const { X, Y, Z } = adaptXyz(xyzFromLab(lab), 'D65/2deg');
  const xyz = [X / 100, Y / 100, Z / 100] as const;
  const shrunk = xyz.map((v) => v * (1 - EDGE) + EDGE * 0.2) as [number, number, number];
  const percents = (gamut: Gamut): string =>
    intoGamut(xyz, gamut)
      .map((v) => `${(100 * v).toFixed(2)}%`)
      .join(' ');
  return {
    p3: `color(display-p3 ${percents('p3')})`,
    srgb: `rgb(${percents('srgb')})`,
    inSrgb: inGamut(shrunk, 'srgb'),
    inP3: inGamut(shrunk, 'p3'),
  };
}
