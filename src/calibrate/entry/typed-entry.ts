/**
 * A reading as a person has it in front of them, and what becomes of it: the same form and values a head would give.
 * Nothing is guessed in silence: what had to be assumed is listed in words, and what cannot be told is asked.
 */
import type { Illuminant, Observer } from '../../colour/illuminant.ts';
import type { Geometry, InstrumentDescription } from '../swatch-set/schema.ts';

export interface TypedBand {
  readonly name?: string | undefined;
  /** nm */
  readonly centre: number;
  /** nm */
  readonly fwhm: number;
}

export type TypedEntry =
  | {
      readonly kind: 'reflectance';
      readonly geometry: Geometry;
      /** Left out: told from the values where that is certain, else asked. */
      readonly scale?: '0-1' | 'percent' | undefined;
      /** nm, regular or not. */
      readonly wavelengths: readonly number[];
      readonly values: readonly number[];
    }
  | {
      readonly kind: 'bands';
      readonly geometry: Geometry;
      readonly scale?: '0-1' | 'percent' | undefined;
      readonly bands: readonly TypedBand[];
      readonly values: readonly number[];
    }
  | {
      readonly kind: 'XYZ';
      readonly geometry: Geometry;
      /** Y of the perfect diffuser. */
      readonly scale?: '100' | '1' | undefined;
      readonly illuminant: Illuminant;
      readonly observer: Observer;
      readonly values: readonly number[];
    }
  | {
      readonly kind: 'Lab';
      readonly geometry: Geometry;
      readonly illuminant: Illuminant;
      readonly observer: Observer;
      readonly values: readonly number[];
    };

export type EntryOutcome =
  | {
      readonly outcome: 'reading';
      /** As `instrument` of a swatch set. */
      readonly form: InstrumentDescription;
      /** One number per channel: reflectance factor, or fraction of the perfect diffuser for X, Y and Z. */
      readonly values: number[];
      /** What was assumed or is worth a second look, one sentence each. Show them. */
      readonly assumed: readonly string[];
    }
  | {
      readonly outcome: 'question';
      readonly sentence: string;
      /** What `scale` may be set to. */
      readonly choices: readonly string[];
    };
