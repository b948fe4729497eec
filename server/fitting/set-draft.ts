import type { Backing, Check, Swatch } from '../../src/calibrate/swatch-set/schema.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import { freeId } from '../store/ids.ts';
import type { SwatchRow } from '../store/swatches.ts';

export type Over = 'opaque' | 'black' | 'white';

/** A swatch set being made of what the store holds. */
export class SetDraft {
  readonly formId: string;
  /** Readings whose block no white has closed yet are taken as they stand: for a file, never for a fit. */
  readonly takesOpen: boolean;
  readonly swatches: Swatch[] = [];
  readonly backings: Backing[] = [];
  readonly checks: Check[] = [];
  /** The readings that go into a fit of this set; those of checks do not. */
  readonly readingIds: string[] = [];
  /** What was left out and why, in sentences. */
  readonly leftOut: string[] = [];
  /** Where each swatch came from. A rung over a card is two swatches of one origin. */
  readonly origins = new Map<string, SwatchRow>();
  readonly scaleResolutions: number[] = [];

  constructor(formId: string, takesOpen = false) {
    this.formId = formId;
    this.takesOpen = takesOpen;
  }

  /** Kept readings of this set's form. */
  kept(readings: readonly JudgedReading[], over: Over): JudgedReading[] {
    return readings.filter(
      (r) => r.state === 'kept' && r.row.form_id === this.formId && r.row.over_what === over,
    );
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

/** Channel by channel. */
export function meanOf(readings: readonly (readonly number[])[]): number[] {
  return readings[0]!.map((_, c) => readings.reduce((sum, r) => sum + r[c]!, 0) / readings.length);
}
