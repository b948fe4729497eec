/**
 * Drying shift: the same swatches read twice, wet and dry. The film is the same, so only the noise of the two readings
 * stands between them, and a difference far smaller than the doubt in any constant can be told.
 */
import type { Swatch, SwatchSet } from '../calibrate/swatch-set/schema.ts';
import { ciede2000 } from '../colour/ciede2000.ts';
import type { Lab } from '../colour/lab.ts';
import { labRegion } from './lab-region.ts';
import { gridEstimator } from './observe/grid-estimate.ts';
import { meanVariance, readingNoise } from './observe/reading-noise.ts';
import { responseRows } from './observe/response-rows.ts';
import { say } from './sentences.ts';

export interface DryingShift {
  /** Id of the swatch in both documents. */
  readonly id: string;
  /** Days between painting and each reading, where noted. */
  readonly wetDays: number | null;
  readonly dryDays: number | null;
  readonly wet: Lab;
  readonly dry: Lab;
  /** CIEDE2000 (D65/10deg) with the bounds that hold the true shift 95 times in 100. */
  readonly deltaE00: number;
  readonly low: number;
  readonly high: number;
  /** The shift lies outside what the noise of the readings allows 95 times in 100. */
  readonly beyondNoise: boolean;
  readonly words: string;
}

/** Least change of one attribute that is put in words, CIELAB units. This project's choice. */
const WORTH_SAYING = 0.2;

/**
 * The shift of every swatch that both documents hold, by id, in the order of the wet one.
 * @throws RangeError where the instruments differ in kind, geometry or channels, or no swatch is in both.
 */
export function dryingShift(wet: SwatchSet, dry: SwatchSet): DryingShift[] {
  const rows = responseRows(wet.instrument);
  const dryRows = responseRows(dry.instrument);
  if (
    wet.instrument.kind !== dry.instrument.kind ||
    wet.instrument.geometry !== dry.instrument.geometry ||
    rows.length !== dryRows.length ||
    rows.some((row, c) => row.some((v, i) => Math.abs(v - dryRows[c]![i]!) > 1e-9))
  ) {
    throw new RangeError(say('other-instruments'));
  }
  const shifts = wet.swatches.flatMap((before) => {
    const after = dry.swatches.find((s) => s.id === before.id);
    return after ? [shiftOf(before, after, rows, wet, dry)] : [];
  });
  if (shifts.length === 0) {
    throw new RangeError(say('no-same-id'));
  }
  return shifts;
}

/** The same of the films that one document holds twice: `again` names the swatch as it was read first. */
export function dryingShiftsIn(set: SwatchSet): DryingShift[] {
  const rows = responseRows(set.instrument);
  return set.swatches.flatMap((after) => {
    const before = set.swatches.find((s) => s.id === after.again);
    return before ? [shiftOf(before, after, rows, set, set)] : [];
  });
}

function shiftOf(
  before: Swatch,
  after: Swatch,
  rows: readonly Float64Array[],
  wetSet: SwatchSet,
  drySet: SwatchSet,
): DryingShift {
  const toGrid = gridEstimator(rows);
  const seen = (swatch: Swatch, set: SwatchSet): { R: Float64Array; factor: Float64Array[] } => {
    const noise = readingNoise(set);
    const repeats = swatch.readings.length;
    const mean = Float64Array.from(rows, (_, c) => swatch.readings.reduce((a, r) => a + r[c]! / repeats, 0));
    const factor = Array.from(mean, (v, c) =>
      toGrid(Float64Array.from(mean, (_, k) => (k === c ? Math.sqrt(meanVariance(noise, v, repeats)) : 0))),
    );
    return { R: toGrid(mean), factor };
  };
  const wet = seen(before, wetSet);
  const dry = seen(after, drySet);
  const { lab: wetLab } = labRegion(wet.R, []);
  const region = labRegion(dry.R, [...dry.factor, ...wet.factor]);
  const deltaE00 = ciede2000(wetLab, region.lab);
  const beyondNoise = !region.contains(wetLab);
  const days = [before.ageDays ?? null, after.ageDays ?? null] as const;
  return {
    id: before.id,
    wetDays: days[0],
    dryDays: days[1],
    wet: wetLab,
    dry: region.lab,
    deltaE00,
    low: Math.max(0, deltaE00 - region.radius),
    high: deltaE00 + region.radius,
    beyondNoise,
    words: beyondNoise
      ? say('dried', {
          swatch: before.id,
          way: direction(wetLab, region.lab),
          deltaE: deltaE00.toFixed(1),
          since: since(days),
        })
      : say('dried-the-same', { swatch: before.id, since: since(days) }),
  };
}

function direction(wet: Lab, dry: Lab): string {
  const dL = dry.L - wet.L;
  const dC = Math.hypot(dry.a, dry.b) - Math.hypot(wet.a, wet.b);
  const said = [
    ...(Math.abs(dL) >= WORTH_SAYING ? [dL > 0 ? 'lighter' : 'darker'] : []),
    ...(Math.abs(dC) >= WORTH_SAYING ? [dC > 0 ? say('more-colourful') : 'greyer'] : []),
  ];
  return said.join(' and ') || say('shade-apart');
}

function since([wet, dry]: readonly [number | null, number | null]): string {
  return wet === null || dry === null ? '' : say('since', { from: wet, to: dry });
}
