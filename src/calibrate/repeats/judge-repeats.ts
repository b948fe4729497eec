/**
 * Accepting repeats of one swatch. Per channel the median and a robust standard deviation (never below what the head
 * and its placing are known to scatter); a reading is sent back when it lies more than three of those away, taken as
 * the root mean square over channels, or when one channel alone lies further out than chance allows with so many.
 * Nothing is dropped: what is sent back is returned with its reason, and the painter may overrule it.
 *
 * How many are enough follows the sense of ASTM E1345 ("Reducing the Effect of Variability of Color Measurement by
 * Use of Multiple Measurements"): n = (s / e)^2 readings bring the standard error of their mean down to e.
 */
import { normalQuantile } from '../tile/normal-quantile.ts';
import { median, robustSdOfFew } from './robust.ts';
import { neededReadings, repeatsSentence } from './repeats-sentence.ts';
import { say } from './sentences.ts';

/** A standard deviation as a function of reflectance: sqrt(sigma^2 + (relative R)^2). */
export interface ScatterModel {
  readonly sigma: number;
  readonly relative: number;
}

/** One reading with re-placing, for a self-built 45/0 head (design estimate: 0.5 % of R; common practice, no source). */
export const EXPECTED_SCATTER: ScatterModel = { sigma: 0.0008, relative: 0.005 };
/** Wanted standard error of a swatch's mean. Common practice, no source. */
export const WANTED_ERROR: ScatterModel = { sigma: 0.0006, relative: 0.004 };

export interface RepeatsAsked {
  readonly channels: readonly string[];
  /** Least number of kept readings; 3 when left out. */
  readonly wanted?: number;
  readonly expected?: ScatterModel;
  readonly error?: ScatterModel;
}

export interface SentBack {
  /** Which of the readings, counted from 0. */
  readonly index: number;
  /** Distance in robust standard deviations. */
  readonly distance: number;
  readonly reason: string;
}

export interface RepeatsVerdict {
  /** Enough readings agree. */
  readonly accepted: boolean;
  /** Readings still to take, as far as can be told now. */
  readonly more: number;
  readonly kept: readonly number[];
  readonly sentBack: readonly SentBack[];
  /** Median of the kept readings per channel; empty without readings. */
  readonly median: Float64Array;
  /** Root mean square scatter of the kept readings, in units of what is expected; 0 for one. */
  readonly scatter: number;
  readonly sentence: string;
}

const LIMIT = 3;
const CHANCE = 0.0027;
/** The expected scatter counts as this many readings. Common practice, no source. */
const EXPECTED_WEIGHT = 4;
const MOST = 20;

/** Standard deviation of a scatter model at a reflectance. */
export function scatterAt(model: ScatterModel, R: number): number {
  return Math.hypot(model.sigma, model.relative * R);
}

/** Judges all repeats of one swatch so far. Readings are reflectance per channel, each as long as `channels`. */
export function judgeRepeats(readings: readonly ArrayLike<number>[], asked: RepeatsAsked): RepeatsVerdict {
  const { channels } = asked;
  const wanted = asked.wanted ?? 3;
  const expected = asked.expected ?? EXPECTED_SCATTER;
  const error = asked.error ?? WANTED_ERROR;
  const odd = readings.findIndex((r) => r.length !== channels.length);
  if (odd >= 0) {
    throw new RangeError(
      say('channels-differ', { reading: odd + 1, seen: readings[odd]!.length, wanted: channels.length }),
    );
  }
  const of = (indices: readonly number[], c: number): number[] => indices.map((i) => readings[i]![c]!);
  const broken = brokenOnes(readings, channels);
  const without = new Set(broken.map((b) => b.index));
  const all = readings.map((_, i) => i).filter((i) => !without.has(i));
  const middle = channels.map((_, c) => (all.length ? median(of(all, c)) : Number.NaN));
  // One reading of two cannot be told from the other; from three on, the far one shows.
  const far = all.length < 3 ? [] : farOnes(readings, all, channels, middle, expected);
  // When half or more would go there is no crowd to be far from: keep all, ask for more.
  const split = far.length * 2 >= Math.max(1, all.length);
  const sentBack = [...broken, ...(split ? [] : far)];
  const gone = new Set(sentBack.map((s) => s.index));
  const kept = all.filter((i) => !gone.has(i));
  const size = channels.length;
  const spread = channels.map((_, c) => sampleSd(of(kept, c)));
  const keptMiddle = Float64Array.from(channels, (_, c) => (kept.length ? median(of(kept, c)) : Number.NaN));
  const rms = (model: ScatterModel): number =>
    kept.length < 2
      ? 0
      : Math.sqrt(spread.reduce((sum, s, c) => sum + (s / scatterAt(model, keptMiddle[c]!)) ** 2, 0) / size);
  const need = split ? all.length + 2 : Math.max(wanted, neededReadings(rms(error), kept.length, MOST));
  const more = Math.max(0, need - kept.length);
  const scatter = rms(expected);
  return {
    accepted: kept.length > 0 && more === 0,
    more,
    kept,
    sentBack,
    median: kept.length ? keptMiddle : new Float64Array(0),
    scatter,
    sentence: repeatsSentence({ kept: kept.length, sentBack: gone.size, more, wanted, scatter, split }),
  };
}

/** Readings with a value that is no number: nothing can be far from those. */
function brokenOnes(readings: readonly ArrayLike<number>[], channels: readonly string[]): SentBack[] {
  return readings.flatMap((r, index) => {
    const at = channels.findIndex((_, c) => !Number.isFinite(r[c]));
    if (at < 0) return [];
    const reason = say('no-number', { reading: index + 1, channel: channels[at]! });
    return [{ index, distance: Number.POSITIVE_INFINITY, reason }];
  });
}

function farOnes(
  readings: readonly ArrayLike<number>[],
  among: readonly number[],
  channels: readonly string[],
  middle: readonly number[],
  expected: ScatterModel,
): SentBack[] {
  // Few readings tell their own spread badly, the more so with a wild one among them: what is expected of the head
  // weighs in as so many readings would.
  const sd = channels.map((_, c) => {
    const usual = scatterAt(expected, middle[c]!);
    const own = robustSdOfFew(among.map((i) => readings[i]![c]!));
    const weight = among.length - 1;
    return Math.max(
      usual,
      Math.sqrt((EXPECTED_WEIGHT * usual ** 2 + weight * own ** 2) / (EXPECTED_WEIGHT + weight)),
    );
  });
  const alone = Math.max(LIMIT, normalQuantile(1 - CHANCE / (2 * channels.length)));
  return among.flatMap((index) => {
    const z = channels.map((_, c) => (readings[index]![c]! - middle[c]!) / sd[c]!);
    const squares = z.reduce((sum, v) => sum + v * v, 0);
    const distance = Math.sqrt(squares / z.length);
    const worst = z.reduce((at, v, c) => (Math.abs(v) > Math.abs(z[at]!) ? c : at), 0);
    if (distance <= LIMIT && Math.abs(z[worst]!) <= alone) return [];
    const one = channels.length > 2 && z[worst]! ** 2 > squares / 2;
    const lighter = (one ? z[worst]! : z.reduce((sum, v) => sum + v, 0)) > 0 ? 'lighter' : 'darker';
    const times = (distance > LIMIT ? distance : Math.abs(z[worst]!)).toFixed(1);
    const reason = say('sent-back', {
      reading: index + 1,
      way: lighter,
      mostly: one ? say('mostly-in', { channel: channels[worst]! }) : '',
      times,
    });
    return [{ index, distance, reason }];
  });
}

function sampleSd(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}
