/**
 * A picture as families: one value step, warm or cool. A painter's simplification: squint, say light or dark, then say
 * warm or cool.
 */
import { lean } from '../colour/lean.ts';
import type { Lab } from '../colour/lab.ts';
import { valueOfLuminance } from '../colour/munsell-value.ts';
import { median } from './median.ts';
import { type LabPicture, PICTURE_WHITE } from './picture-lab.ts';
import { joinSmallFamilies, joinSpecks } from './simplify.ts';
import { type Stepping, stepEdges } from './value-steps.ts';
import { say } from './sentences.ts';

/** Where warm parts from cool: at the neutral of the same value, at each step's own middle, or not at all. */
export type Split = 'neutral' | 'within each step' | 'none';

export interface FamilySettings {
  /** Number of value steps, 2 to 9. */
  readonly steps: number;
  readonly stepping: Stepping;
  readonly split: Split;
  /** Families below this share of the area (0..1) join the family whose colour is nearest. */
  readonly smallestShare: number;
  /** Each pixel takes the family most common within this many pixels; 0 leaves every pixel as it is. */
  readonly specks: number;
}

export const FAMILY_SETTINGS: FamilySettings = {
  steps: 4,
  stepping: 'natural',
  split: 'neutral',
  smallestShare: 0.01,
  specks: 4,
};

export interface Family {
  /** 0 is the darkest step. */
  readonly step: number;
  readonly side: 'warm' | 'cool' | 'whole';
  /** Median of the family's pixels, each channel by itself. */
  readonly lab: Lab<typeof PICTURE_WHITE>;
  /** Munsell value of the median luminance. Y is D65's, not C's: good to about 0.1 of a value. */
  readonly value: number;
  /** Share of the picture's area, 0..1; all families sum to 1. */
  readonly share: number;
}

export interface Families {
  readonly width: number;
  readonly height: number;
  /** From the darkest step up, cool before warm. */
  readonly families: readonly Family[];
  /** Index into `families` for each pixel, rows from the top. */
  readonly of: Uint8Array;
  /** Upper edge of each value step but the last. */
  readonly edges: readonly number[];
}

/**
 * @throws RangeError for settings out of range.
 */
export function familiesOf(picture: LabPicture, settings: FamilySettings = FAMILY_SETTINGS): Families {
  refuseBadSettings(settings);
  const values = Float32Array.from(picture.Y, (Y) => valueOfLuminance(Y));
  const edges = stepEdges(values, settings.steps, settings.stepping);
  const step = Uint8Array.from(values, (v) => edges.filter((edge) => v >= edge).length);
  const middles = sideMiddles(picture, step, edges.length + 1, settings.split);
  const label = step.map((s, i) =>
    settings.split === 'none' || lean({ a: picture.a[i]!, b: picture.b[i]! }) < middles[s]!
      ? 2 * s
      : 2 * s + 1,
  );
  const kinds = 2 * (edges.length + 1);
  const joined = joinSmallFamilies(
    joinSpecks(label, picture.width, picture.height, settings.specks, kinds),
    picture,
    kinds,
    settings.smallestShare,
  );
  const present = [...new Set(joined)].sort((p, q) => p - q);
  const place = new Map(present.map((k, i) => [k, i]));
  return {
    width: picture.width,
    height: picture.height,
    edges,
    of: joined.map((k) => place.get(k)!),
    families: present.map((kind) => familyOf(kind, picture, values, joined, settings.split)),
  };
}

function sideMiddles(picture: LabPicture, step: Uint8Array, steps: number, split: Split): number[] {
  if (split !== 'within each step') return Array.from({ length: steps }, () => 0);
  return Array.from({ length: steps }, (_, s) => {
    const leans: number[] = [];
    step.forEach((mine, i) => mine === s && leans.push(lean({ a: picture.a[i]!, b: picture.b[i]! })));
    return median(leans);
  });
}

function familyOf(
  kind: number,
  picture: LabPicture,
  values: Float32Array,
  of: Uint8Array,
  split: Split,
): Family {
  const pixels: number[] = [];
  of.forEach((k, i) => k === kind && pixels.push(i));
  const middle = (channel: Float32Array): number => median(pixels.map((i) => channel[i]!));
  return {
    step: kind >> 1,
    side: split === 'none' ? 'whole' : kind % 2 ? 'warm' : 'cool',
    lab: { L: middle(picture.L), a: middle(picture.a), b: middle(picture.b), white: PICTURE_WHITE },
    value: middle(values),
    share: pixels.length / of.length,
  };
}

function refuseBadSettings({ steps, smallestShare, specks }: FamilySettings): void {
  if (!Number.isInteger(steps) || steps < 2 || steps > 9) {
    throw new RangeError(say('steps', { steps }));
  }
  if (!(smallestShare >= 0 && smallestShare < 0.5)) {
    throw new RangeError(say('share', { share: smallestShare }));
  }
  if (!Number.isInteger(specks) || specks < 0 || specks > 20) {
    throw new RangeError(say('specks', { pixels: specks }));
  }
}
