import type { Geometry } from '../../calibrate/swatch-set/schema.ts';
import { say } from './sentences.ts';

export const QUANTITIES = [
  'reflectance',
  'K',
  'S',
  'own factor K',
  'own factor S',
  'shared factor K',
  'shared factor S',
] as const;
/** What one row of a spectral table holds. */
export type Quantity = (typeof QUANTITIES)[number];

/** One sample with one curve; `tags` hold whatever else the file said about it, as text. */
export interface SpectralRow {
  readonly id: string;
  readonly name: string;
  readonly quantity: Quantity;
  /** nm, ascending. */
  readonly wavelengthsNm: readonly number[];
  /** One number a wavelength; reflectance factors 0..1. Empty where the file gave colorimetric values only. */
  readonly values: readonly number[];
  readonly lab?: { readonly L: number; readonly a: number; readonly b: number };
  readonly xyz?: { readonly X: number; readonly Y: number; readonly Z: number };
  readonly tags: Readonly<Record<string, string>>;
}

/** Something the file did not say and the reader took; it is listed and can be changed by reading again. */
export interface Assumption {
  /** Which choice to hand back in `ReadChoices` to change it. */
  readonly choice: keyof ReadChoices | 'none';
  /** One sentence: what was taken and why. */
  readonly sentence: string;
}

/** Answers to what a file leaves open. */
export interface ReadChoices {
  /** Whether spectral numbers are fractions (0..1) or per cent. */
  readonly scale?: 'fraction' | 'per cent';
  /** Whether a comma between digits is a decimal comma. */
  readonly decimalComma?: boolean;
  readonly geometry?: Geometry;
}

/** A file of spectra or constants, whatever format it came in or goes out as. */
export interface SpectralTable {
  readonly title: string;
  /** ISO 8601, where known. */
  readonly created?: string;
  readonly originator?: string;
  readonly instrument?: string;
  readonly geometry?: Geometry;
  /** Illuminant and observer that colorimetric columns are under, as the file wrote them. */
  readonly white?: string;
  readonly rows: readonly SpectralRow[];
  /** Facts about the whole table that other members do not hold, as text. */
  readonly notes: Readonly<Record<string, string>>;
  readonly assumptions: readonly Assumption[];
}

/** What a writer could not put into its format, one sentence each; empty when nothing was lost. */
export interface Written {
  readonly text: string;
  readonly notHeld: readonly string[];
}

/** A file that cannot be taken, or a question only the user can answer, in one sentence. */
export class ExchangeProblem extends Error {
  /** Set when an answer in `ReadChoices` would settle it. */
  readonly choice: keyof ReadChoices | undefined;

  constructor(sentence: string, choice?: keyof ReadChoices) {
    super(sentence);
    this.name = 'ExchangeProblem';
    this.choice = choice;
  }
}

/** Limits on a file from elsewhere; larger ones are refused, not cut. */
export const FILE_LIMITS = { bytes: 20_000_000, rows: 20_000, columns: 4_000, xmlDepth: 40 } as const;

/** Refuses a file over the size limit before any of it is parsed. */
export function refuseOversize(text: string): void {
  if (text.length > FILE_LIMITS.bytes) {
    throw new ExchangeProblem(
      say('characters', { count: (text.length / 1e6).toFixed(1), most: FILE_LIMITS.bytes / 1e6 }),
    );
  }
}

/** @throws ExchangeProblem for a quantity that is not known. */
export function quantityFrom(text: string, where: string): Quantity {
  const found = QUANTITIES.find((q) => q === text.trim());
  if (found === undefined) {
    throw new ExchangeProblem(
      say('quantity', { text: text.slice(0, 40), where, known: QUANTITIES.join(', ') }),
    );
  }
  return found;
}
