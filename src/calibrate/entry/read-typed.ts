import { parseWhiteName } from '../../colour/illuminant.ts';
import { xyzFromLab } from '../../colour/lab.ts';
import { whitePoint } from '../../colour/white-point.ts';
import { GEOMETRIES, type Geometry } from '../swatch-set/schema.ts';
import { ReadingRefused } from '../refusal.ts';
import { HIGHEST_REFLECTANCE } from '../limits.ts';
import { holdReflectance, tellScale } from './scale.ts';
import type { EntryOutcome, TypedEntry } from './typed-entry.ts';
import { orderWavelengths } from './wavelengths.ts';
import { say } from './sentences.ts';

const PLAIN = { words: say('zero-to-one'), factor: 1 };
const PER_CENT = { words: say('per-cent'), factor: 0.01 };
const HUNDRED = { words: say('y-at-100'), factor: 0.01 };
const ONE = { words: say('y-at-1'), factor: 1 };

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
  if (odd >= 0) refuse(say('not-a-number', { place: odd + 1 }));
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
    refuse(say('geometry', { geometry: String(geometry), known: GEOMETRIES.join(', ') }));
  }
}

function scaled(
  entry: Extract<TypedEntry, { kind: 'reflectance' | 'bands' }>,
  places: readonly string[],
): { values: number[]; assumed: string[] } | EntryOutcome {
  if (entry.values.length !== places.length) {
    refuse(say('places-values', { places: places.length, values: entry.values.length }));
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
  const places = entry.bands.map((b, i) => b.name ?? say('band', { number: i + 1 }));
  entry.bands.forEach((b, i) => {
    if (!(b.centre >= 300 && b.centre <= 1100 && b.fwhm > 0 && b.fwhm <= 400)) {
      refuse(say('band-range', { band: places[i]!, centre: b.centre, width: b.fwhm }));
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
    refuse(say('no-white'));
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
  if (entry.values.length !== 3) refuse(say('three-xyz', { count: entry.values.length }));
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
  if (entry.values.length !== 3) refuse(say('three-lab', { count: entry.values.length }));
  const [L, a, b] = entry.values as [number, number, number];
  if (!(L >= 0 && L <= 108)) refuse(say('lightness', { L }));
  const white = whitePoint(name);
  const xyz = xyzFromLab({ L, a, b, white: name });
  const values = [xyz.X / white.X, xyz.Y / white.Y, xyz.Z / white.Z];
  if (values.some((v) => v < 0 || v > 1.5)) {
    refuse(say('no-colour', { L, a, b, white: name }));
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
