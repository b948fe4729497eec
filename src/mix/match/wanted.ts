import { GRID_SIZE, type Spectrum, spectrumFrom } from '../../colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { type Lab, labF, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { xyzOf } from '../../colour/xyz.ts';
import { MixProblem } from '../problem.ts';
import { type Emphasis, EVEN, type WantedChannels } from '../search/goal.ts';
import { refuseImpossibleColour } from './surface-colours.ts';
import { say } from '../sentences.ts';

/**
 * A wanted colour.
 * - `lab`: it carries its own white, and recipes are compared under that one.
 * - `spectrum`: 36 reflectance factors on the grid, as the palette's geometry reads them.
 * A reading through an instrument becomes a spectrum by `spectrumOfReading`.
 */
export type Wanted = { readonly lab: Lab } | { readonly spectrum: ArrayLike<number> };

/** What to hold on to where not everything can be had. */
export const PRIORITIES = ['evenly', 'value', 'hue'] as const;
/**
 * - `evenly`: CIEDE2000 as it is.
 * - `value`: value exact, the rest as near as can be.
 * - `hue`: the hue family kept, at some cost in chroma and value.
 */
export type Priority = (typeof PRIORITIES)[number];

/** A difference of lightness counts this many times over where value is held: off by 0.01 in L* at the most. */
const HELD = 100;
/** A difference of hue counts this many times over where the hue is held. Our choice, no source. */
const HUE_HELD = 5;

/** A wanted colour, checked and put into the channels of a search. */
export interface WantedColour {
  readonly lab: Lab;
  /** Only where a spectrum was wanted. */
  readonly spectrum?: Spectrum;
  readonly channels: WantedChannels;
  readonly emphasis: Emphasis;
}

/** Values a reflectance factor can have; a little over 1 is legitimate at 45/0. */
const HIGHEST_REFLECTANCE = 1.2;

function checkedSpectrum(values: ArrayLike<number>): Spectrum {
  const spectrum = spectrumFrom(values);
  for (let i = 0; i < GRID_SIZE; i++) {
    const r = spectrum[i]!;
    if (!(r >= 0 && r <= HIGHEST_REFLECTANCE)) {
      throw new MixProblem(say('wanted-reflectance', { value: r, sample: i + 1, of: GRID_SIZE }));
    }
  }
  return spectrum;
}

/**
 * Checks a wanted colour. A spectrum is looked at under `white`; a Lab brings its own.
 * @throws MixProblem for numbers that are no surface's colour.
 */
export function wantedColour(
  wanted: Wanted,
  priority: Priority = 'evenly',
  white: WhiteName = DEFAULT_WHITE,
): WantedColour {
  if (!PRIORITIES.includes(priority)) {
    throw new MixProblem(say('priority', { priority: String(priority), known: PRIORITIES.join(', ') }));
  }
  const hue = priority === 'hue' ? HUE_HELD : 1;
  if ('lab' in wanted) {
    refuseImpossibleColour(wanted.lab);
    const { L, a, b } = wanted.lab;
    const lightness = priority === 'value' ? HELD : 1;
    return { lab: wanted.lab, channels: { L, a, b }, emphasis: { ...EVEN, lightness, hue } };
  }
  const spectrum = checkedSpectrum(wanted.spectrum);
  const lab = labOfReflectance(spectrum, tristimulusWeights(white));
  const valueL = 116 * labF(xyzOf(spectrum, tristimulusWeights('C/2deg')).Y / 100) - 16;
  const value = priority === 'value' ? HELD : 0;
  const channels = { L: lab.L, a: lab.a, b: lab.b, ...(value ? { valueL } : {}) };
  return { lab, spectrum, channels, emphasis: { ...EVEN, value, hue } };
}

/** The white a search for it runs under. */
export function whiteOfWanted(wanted: Wanted, white: WhiteName = DEFAULT_WHITE): WhiteName {
  return 'lab' in wanted ? wanted.lab.white : white;
}
