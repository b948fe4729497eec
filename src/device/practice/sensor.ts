import { GRID_NM, GRID_SIZE, spectrumFrom } from '../../colour/grid.ts';
import type { Spectrum } from '../../colour/grid.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';

/** The practice heads: eight bands and a clear channel, a spectrum of 36 or 31 channels, or X, Y, Z. */
export type PracticeVariant = 'bands-8' | 'spectral-36' | 'spectral-31' | 'xyz';

export interface PracticeChannel {
  readonly name: string;
  readonly centreNm: number | undefined;
  readonly fwhmNm: number | undefined;
  /** Filter x lamp x detector on the grid, summing to 1: a count is this times the reflectance. */
  readonly response: Spectrum;
  /** Signal of a perfect diffuser, against the strongest channel's 1. */
  readonly strength: number;
}

export interface PracticeSensor {
  readonly model: string;
  readonly scpiKind: 'BAND' | 'SPEC' | 'XYZ';
  readonly passes: number;
  readonly channels: readonly PracticeChannel[];
}

const bell = (nm: number, centre: number, sd: number): number => Math.exp(-0.5 * ((nm - centre) / sd) ** 2);
const sdOfFwhm = (fwhm: number): number => fwhm / Math.sqrt(8 * Math.LN2);

/** An invented violet-pumped LED without deep gaps: every band gets light. */
const LAMP = GRID_NM.map(
  (nm) => 0.25 + 0.5 * bell(nm, 412, 12) + 0.75 * bell(nm, 545, 75) + 0.55 * bell(nm, 650, 45),
);

/** Name, centre and full width at half maximum (nm): nominals of an AS7341-class sensor, as its data sheet lists them. */
export const EIGHT_BANDS: readonly (readonly [string, number, number])[] = [
  ['F1', 415, 26],
  ['F2', 445, 30],
  ['F3', 480, 36],
  ['F4', 515, 39],
  ['F5', 555, 39],
  ['F6', 590, 40],
  ['F7', 630, 50],
  ['F8', 680, 52],
];

interface Raw {
  readonly name: string;
  readonly centreNm: number | undefined;
  readonly fwhmNm: number | undefined;
  readonly light: readonly number[];
}

const filtered = (name: string, centreNm: number, fwhmNm: number): Raw => ({
  name,
  centreNm,
  fwhmNm,
  light: GRID_NM.map((nm, i) => (LAMP[i] ?? 0) * bell(nm, centreNm, sdOfFwhm(fwhmNm))),
});

const wide = (name: string, light: readonly number[]): Raw => ({
  name,
  centreNm: undefined,
  fwhmNm: undefined,
  light,
});

function spectral(model: string, firstNm: number, lastNm: number): PracticeSensor {
  const inside = GRID_NM.filter((nm) => nm >= firstNm && nm <= lastNm);
  const raw = inside.map((nm) => filtered(String(nm), nm, 10));
  return { model, scpiKind: 'SPEC', passes: 1, channels: finish(raw) };
}

export function practiceSensor(variant: PracticeVariant): PracticeSensor {
  switch (variant) {
    case 'bands-8': {
      const clear = wide(
        'CLR',
        LAMP.map((light) => 0.12 * light),
      );
      const raw = [...EIGHT_BANDS.map(([name, centre, fwhm]) => filtered(name, centre, fwhm)), clear];
      return { model: 'PRACTICE-8', scpiKind: 'BAND', passes: 2, channels: finish(raw) };
    }
    case 'spectral-36':
      return spectral('PRACTICE-36', 380, 730);
    case 'spectral-31':
      return spectral('PRACTICE-31', 400, 700);
    case 'xyz': {
      const { x, y, z } = tristimulusWeights('D65/10deg');
      const raw = [wide('X', [...x]), wide('Y', [...y]), wide('Z', [...z])];
      return { model: 'PRACTICE-XYZ', scpiKind: 'XYZ', passes: 1, channels: finish(raw) };
    }
  }
}

function finish(raw: readonly Raw[]): PracticeChannel[] {
  const sums = raw.map(({ light }) => light.reduce((a, b) => a + b, 0));
  const strongest = Math.max(...sums);
  return raw.map(({ name, centreNm, fwhmNm, light }, i) => {
    const sum = sums[i] ?? 1;
    const response = spectrumFrom(light.map((value) => value / sum));
    return { name, centreNm, fwhmNm, response, strength: sum / strongest };
  });
}

/** What a channel sees of a surface: sum of response x reflectance. */
export function seen(channel: PracticeChannel, reflectance: Spectrum): number {
  let sum = 0;
  for (let i = 0; i < GRID_SIZE; i++) sum += (channel.response[i] ?? 0) * (reflectance[i] ?? 0);
  return sum;
}
