import type { ColourAnswer } from '../api/words.ts';
import type { ReadingForm } from '../api/readings.ts';
import { displayColour } from '../../src/colour/display.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName, whiteParts } from '../../src/colour/illuminant.ts';
import { interpolationRows } from '../../src/colour/interpolation.ts';
import { chroma, labOf, type Lab } from '../../src/colour/lab.ts';
import { lean, leanWord } from '../../src/colour/lean.ts';
import { valueOfLuminance } from '../../src/colour/munsell-value.ts';
import { valueOfReflectance } from '../../src/colour/value-of-reflectance.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { type Xyz, xyzOf } from '../../src/colour/xyz.ts';
import { whitePoint } from '../../src/colour/white-point.ts';

type Origin = ColourAnswer['from'];

/** The colour of a reflectance on the given wavelengths (the program's grid unless said). */
export function colourOfReflectance(
  reflectance: ArrayLike<number>,
  from: Origin,
  white: WhiteName = DEFAULT_WHITE,
  wavelengthsNm: readonly number[] = GRID_NM,
): ColourAnswer {
  const xyz = xyzOf(reflectance, tristimulusWeights(white, wavelengthsNm));
  return colourOf(xyz, labOf(xyz), valueOfReflectance(reflectance, wavelengthsNm), from);
}

/**
 * The colour of a reading, for the eye. Bands are joined by straight lines between their centres, which is an
 * estimate and says so; nothing is computed from it. Tristimulus readings keep the white they were read under.
 */
export function colourOfReading(
  values: readonly number[],
  form: ReadingForm,
  white: WhiteName = DEFAULT_WHITE,
): ColourAnswer | null {
  if (values.length === 0 || !values.every(Number.isFinite)) return null;
  if (form.kind === 'spectral') return colourOfReflectance(values, 'reading', white, form.wavelengths);
  if (form.kind === 'bands') {
    const order = form.bands.map((_, i) => i).sort((a, b) => form.bands[a]!.centre - form.bands[b]!.centre);
    const centres = order.map((i) => form.bands[i]!.centre);
    if (centres.length < 3 || centres.some((c, i) => i > 0 && c <= centres[i - 1]!)) return null;
    const sorted = order.map((i) => values[i]!);
    const onGrid = interpolationRows(centres, GRID_NM).map((row) =>
      row.reduce((sum, w, i) => sum + w * sorted[i]!, 0),
    );
    return colourOfReflectance(onGrid, 'estimate from bands', white);
  }
  const read: WhiteName = `${form.illuminant}/${form.observer}`;
  const n = whitePoint(read);
  const xyz: Xyz = { X: values[0]! * n.X, Y: values[1]! * n.Y, Z: values[2]! * n.Z, white: read };
  return colourOf(xyz, labOf(xyz), valueOfLuminance(xyz.Y), 'reading');
}

function colourOf(xyz: Xyz, lab: Lab, value: number, from: Origin): ColourAnswer {
  return {
    XYZ: { X: xyz.X, Y: xyz.Y, Z: xyz.Z },
    Lab: { L: lab.L, a: lab.a, b: lab.b },
    white: whiteParts(xyz.white),
    value,
    lean: lean(lab),
    leanWord: leanWord(lab),
    chroma: chroma(lab),
    display: { ...displayColour(lab) },
    from,
  };
}

/** The names of a reading's channels, in order. */
export function channelNames(form: ReadingForm): string[] {
  if (form.kind === 'spectral') return form.wavelengths.map((nm) => `${nm} nm`);
  if (form.kind === 'bands') return form.bands.map((band) => band.name ?? `${band.centre} nm`);
  return ['X', 'Y', 'Z'];
}
