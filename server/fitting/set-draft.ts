import type { Backing, Check, Swatch } from '../../src/calibrate/swatch-set/schema.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import { freeId } from '../store/ids.ts';
import type { SwatchRow } from '../store/swatches.ts';

export type Over = 'opaque' | 'black' | 'white';

/** A swatch set being made of what the store holds. */
export class SetDraft {
  readonly formId: string;
  /** Open blocks and films read again are taken as they stand: for a file and the drying shift, never for a fit. */
  readonly takesOpen: boolean;
  readonly swatches: Swatch[] = [];
  readonly backings: Backing[] = [];
  readonly checks: Check[] = [];
  /** The readings that go into a fit of this set; those of checks do not. */
  readonly readingIds: string[] = [];
  /** What was left out and why, in sentences. */
  readonly leftOut: string[] = [];
  /** Films that were read again later, which a fit leaves to the drying shift. */
  readonly readAgain = new Set<string>();
  /** Where each swatch came from. A rung over a card is two swatches of one origin. */
  readonly origins = new Map<string, SwatchRow>();
  readonly scaleResolutions: number[] = [];

  constructor(formId: string, takesOpen = false) {
    this.formId = formId;
    this.takesOpen = takesOpen;
  }

  /** Kept readings of this set's form, of the sitting that makes the rung. */
  kept(readings: readonly JudgedReading[], over: Over): JudgedReading[] {
    return readings.filter(
      (r) => r.state === 'kept' && r.main && r.row.form_id === this.formId && r.row.over_what === over,
    );
  }

  /** The same of later sittings, one list each, oldest first. */
  keptAgain(readings: readonly JudgedReading[], over: Over): JudgedReading[][] {
    const first = readings.find((r) => r.main)?.sitting ?? Infinity;
    const later = readings.filter(
      (r) =>
        r.state === 'kept' && r.sitting > first && r.row.form_id === this.formId && r.row.over_what === over,
    );
    return [...new Set(later.map((r) => r.sitting))].map((s) => later.filter((r) => r.sitting === s));
  }

  /** Names readings as used and gives their numbers. */
  use(readings: readonly JudgedReading[]): number[][] {
    this.readingIds.push(...readings.map((r) => r.row.id));
    return readings.map((r) => [...r.values]);
  }

  /** The wanted id, or one like it that no swatch, check or backing has. */
  free(wanted: string): string {
    const all = [...this.swatches, ...this.backings, ...this.checks];
    return freeId(wanted, (id) => all.some((item) => item.id === id));
  }
}

/** Age of the films these readings are of, where it is known. */
export function ageOf(readings: readonly JudgedReading[]): { ageDays?: number } {
  const ages = readings.flatMap((r) => (r.ageDays === null ? [] : [r.ageDays]));
  return ages.length > 0 ? { ageDays: ages.reduce((sum, v) => sum + v, 0) / ages.length } : {};
}

/** Channel by channel. */
export function meanOf(readings: readonly (readonly number[])[]): number[] {
  return readings[0]!.map((_, c) => readings.reduce((sum, r) => sum + r[c]!, 0) / readings.length);
}
