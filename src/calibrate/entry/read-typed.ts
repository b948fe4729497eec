import { parseWhiteName } from '../../colour/illuminant.ts';
import { xyzFromLab } from '../../colour/lab.ts';
import { whitePoint } from '../../colour/tristimulus.ts';
import { GEOMETRIES, type Geometry } from '../swatch-set/schema.ts';
import { ReadingRefused } from '../refusal.ts';
import { HIGHEST_REFLECTANCE } from '../limits.ts';
import { holdReflectance, tellScale } from './scale.ts';
import type { EntryOutcome, TypedEntry } from './typed-entry.ts';
import { orderWavelengths } from './wavelengths.ts';

const PLAIN = { words: '0 to 1', factor: 1 };
const PER_CENT = { words: 'per cent', factor: 0.01 };
const HUNDRED = { words: 'Y of white at 100', factor: 0.01 };
const ONE = { words: 'Y of white at 1', factor: 1 };

function refuse(sentence: string): never {
  throw new ReadingRefused('entry', sentence);
}

/**
 * Turns what was typed into a reading with its form, as a head's would be.
 *
 * Lab and XYZ become fractions of the perfect diffuser, channel by channel: X/Xn, Y/Yn, Z/Zn with the white point of
 * the named illuminant and observer (ISO/CIE 11664-3 and -4), which is how a swatch set holds tristimulus readings.
 * @throws ReadingRefused `entry` with one sentence
 */
export function readTyped(entry: TypedEntry): EntryOutcome {
  holdGeometry(entry.geometry);
  const odd = entry.values.findIndex((v) => !Number.isFinite(v));
  if (odd >= 0) refuse(`Value ${odd + 1} is not a number; type it again.`);
  switch (entry.kind) {
    case 'reflectance':
      return spectral(entry);
    case 'bands':
      return banded(entry);
    case 'XYZ':
      return tristimulus(entry);
    case 'Lab':
      return fromLab(entry);
  }
}

function holdGeometry(geometry: Geometry): void {
  if (!GEOMETRIES.includes(geometry)) {
    refuse(
      `Geometry "${String(geometry)}" is not known; name one of ${GEOMETRIES.join(', ')}, as the instrument's sheet has it.`,
    );
  }
}

function scaled(
  entry: Extract<TypedEntry, { kind: 'reflectance' | 'bands' }>,
  places: readonly string[],
): { values: number[]; assumed: string[] } | EntryOutcome {
  if (entry.values.length !== places.length) {
    refuse(
      `There are ${places.length} wavelengths or bands and ${entry.values.length} values; give one value for each.`,
    );
  }
  const stated = entry.scale === undefined ? undefined : entry.scale === 'percent' ? 'coarse' : 'fine';
  const scale = tellScale(entry.values, stated, PLAIN, PER_CENT);
  if ('question' in scale) {
    return { outcome: 'question', sentence: scale.question, choices: ['0-1', 'percent'] };
  }
  const values = entry.values.map((v) => v * scale.factor);
  holdReflectance(values, places, entry.values);
  return { values, assumed: scale.assumed ? [scale.assumed] : [] };
}

function spectral(entry: Extract<TypedEntry, { kind: 'reflectance' }>): EntryOutcome {
  const places = entry.wavelengths.map((nm) => `${nm} nm`);
  const found = scaled(entry, places);
  if ('outcome' in found) return found;
  const { wavelengths, order, assumed } = orderWavelengths(entry.wavelengths);
  return {
    outcome: 'reading',
    form: { kind: 'spectral', geometry: entry.geometry, wavelengths },
    values: order.map((i) => found.values[i]!),
    assumed: [...found.assumed, ...assumed],
  };
}

function banded(entry: Extract<TypedEntry, { kind: 'bands' }>): EntryOutcome {
  const places = entry.bands.map((b, i) => b.name ?? `band ${i + 1}`);
  entry.bands.forEach((b, i) => {
    if (!(b.centre >= 300 && b.centre <= 1100 && b.fwhm > 0 && b.fwhm <= 400)) {
      refuse(
        `${places[i]} has its centre at ${b.centre} nm and a width of ${b.fwhm} nm; 300 to 1100 nm and up to 400 nm are allowed. Give both in nm.`,
      );
    }
  });
  const found = scaled(entry, places);
  if ('outcome' in found) return found;
  const bands = entry.bands.map(({ name, centre, fwhm }) => ({
    ...(name === undefined ? {} : { name }),
    centre,
    fwhm,
  }));
  return {
    outcome: 'reading',
    form: { kind: 'bands', geometry: entry.geometry, bands },
    values: found.values,
    assumed: found.assumed,
  };
}

/** The named white, or a sentence. Both parts are needed: there is no usual one to fall back on. */
function namedWhite(entry: { readonly illuminant?: string; readonly observer?: string }) {
  if (!entry.illuminant || !entry.observer) {
    refuse(
      'A colour without its illuminant and observer says nothing; name both, such as D65 and 10deg, as on the instrument.',
    );
  }
  try {
    return parseWhiteName(entry.illuminant, entry.observer);
  } catch (error) {
    if (error instanceof RangeError) return refuse(error.message);
    throw error;
  }
}

function tristimulus(entry: Extract<TypedEntry, { kind: 'XYZ' }>): EntryOutcome {
  const white = whitePoint(namedWhite(entry));
  if (entry.values.length !== 3) refuse(`XYZ has three numbers; ${entry.values.length} were given.`);
  const stated = entry.scale === undefined ? undefined : entry.scale === '100' ? 'coarse' : 'fine';
  const scale = tellScale(
    entry.values,
    stated,
    ONE,
    HUNDRED,
    HIGHEST_REFLECTANCE * Math.max(1, white.Z / 100, white.X / 100),
  );
  if ('question' in scale) return { outcome: 'question', sentence: scale.question, choices: ['1', '100'] };
  const [X, Y, Z] = entry.values.map((v) => v * scale.factor * 100) as [number, number, number];
  const values = [X / white.X, Y / white.Y, Z / white.Z];
  holdReflectance(values, ['X', 'Y', 'Z'], entry.values);
  return {
    outcome: 'reading',
    form: {
      kind: 'tristimulus',
      geometry: entry.geometry,
      illuminant: entry.illuminant,
      observer: entry.observer,
    },
    values,
    assumed: scale.assumed ? [scale.assumed] : [],
  };
}

function fromLab(entry: Extract<TypedEntry, { kind: 'Lab' }>): EntryOutcome {
  const name = namedWhite(entry);
  if (entry.values.length !== 3) refuse(`Lab has three numbers; ${entry.values.length} were given.`);
  const [L, a, b] = entry.values as [number, number, number];
  if (!(L >= 0 && L <= 108))
    refuse(`L* is ${L}; 0 to 108 is allowed for a painted patch. Check the order: L*, a*, b*.`);
  const white = whitePoint(name);
  const xyz = xyzFromLab({ L, a, b, white: name });
  const values = [xyz.X / white.X, xyz.Y / white.Y, xyz.Z / white.Z];
  if (values.some((v) => v < 0 || v > 1.5)) {
    refuse(`Lab ${L}, ${a}, ${b} is no colour a paint can have under ${name}; check the signs of a* and b*.`);
  }
  return {
    outcome: 'reading',
    form: {
      kind: 'tristimulus',
      geometry: entry.geometry,
      illuminant: entry.illuminant,
      observer: entry.observer,
    },
    values,
    assumed: [],
  };
}
