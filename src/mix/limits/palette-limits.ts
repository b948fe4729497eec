import type { WhiteName } from '../../colour/illuminant.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { MixProblem, type Watch, heed } from '../problem.ts';
import { tubeSet } from '../tube-set.ts';
import { type EdgeMix, edgeSearch } from './edge-search.ts';
import {
  type NeutralPoint,
  type OutermostMix,
  type StrongestColour,
  type LeanPair,
  darkest,
  leanLimits,
  lightest,
  neutralLine,
  strongestPerHue,
} from './edges.ts';
import { type ValueSlice, slicesVolume, valueSlices } from './slices.ts';
import { say } from '../sentences.ts';

export interface LimitsOptions {
  /** @default 'D65/10deg' */
  readonly white?: WhiteName;
  /** Ids of the tubes. @default all */
  readonly only?: readonly string[];
  /** Munsell values of the slices and the neutral line. @default every whole value between the darkest and the lightest */
  readonly values?: readonly number[];
  /** Hues the strongest colours and slices are taken at, evenly spaced. @default 24 */
  readonly hues?: number;
  readonly watch?: Watch;
}

/** What a set of tubes can reach. */
export interface PaletteLimits {
  readonly white: WhiteName;
  readonly darkest: EdgeMix;
  readonly lightest: EdgeMix;
  readonly neutrals: readonly NeutralPoint[];
  /** The warmest and the coolest mix of each value. */
  readonly leans: readonly LeanPair[];
  readonly strongest: readonly StrongestColour[];
  readonly slices: readonly ValueSlice[];
  /**
   * CIELAB units cubed, from the slices: for comparing palettes, not an absolute. Three tubes make a sheet, not a solid:
   * their volume is next to nothing however much they can do, and `leans` says more.
   */
  readonly volume: number;
}

function evenly(hues: number): number[] {
  if (!(Number.isInteger(hues) && hues >= 3 && hues <= 360)) {
    throw new MixProblem(say('hues', { count: hues }));
  }
  return Array.from({ length: hues }, (_, i) => (360 * i) / hues);
}

/** Room left at both ends, in value, where slices shrink to a point. */
const ENDS = 0.1;

/**
 * Limits of a set of tubes, every one found by solving for it.
 * @throws MixProblem for an empty palette, unknown ids, values outside 0..10.
 * @throws MixingStopped
 */
export function paletteLimits(palette: MixingPalette, options: LimitsOptions = {}): PaletteLimits {
  const set = tubeSet(palette, {
    ...(options.white ? { white: options.white } : {}),
    ...(options.only ? { only: options.only } : {}),
  });
  const hues = evenly(options.hues ?? 24);
  const bad = options.values?.find((v) => !(v >= 0 && v <= 10));
  if (bad !== undefined) throw new MixProblem(say('value', { value: bad }));
  const edge = edgeSearch(set);
  const dark = darkest(edge);
  const light = lightest(edge);
  const asked = options.values ?? Array.from({ length: 20 }, (_, i) => (i + 1) / 2);
  const values = asked
    .filter((v) => v > dark.value + ENDS && v < light.value - ENDS)
    .toSorted((a, b) => a - b);
  heed(options.watch, 0, 1);
  const outermostOf: (OutermostMix | undefined)[] = [];
  const slices = valueSlices(
    edge,
    options.values ? values : values.filter((v) => Number.isInteger(v)),
    hues.length,
    options.watch,
    outermostOf,
  );
  return {
    white: set.white,
    darkest: dark,
    lightest: light,
    neutrals: neutralLine(edge, values, options.watch),
    leans: leanLimits(edge, values),
    strongest: strongestPerHue(edge, hues, outermostOf),
    slices,
    volume: slicesVolume(slices, dark.value, light.value),
  };
}

export interface TubeGain {
  readonly tube: string;
  /** Volume reached with it, CIELAB units cubed, and the share it adds. */
  readonly volume: number;
  readonly gain: number;
}

/** Coarser rounds for comparing tubes. */
const COARSE_HUES = 16;

/**
 * Which one more tube adds most to a choice of tubes: the volume reached with each of the others, most first.
 * @throws MixProblem when no tube is left to add.
 * @throws MixingStopped
 */
export function oneMoreTube(
  palette: MixingPalette,
  chosen: readonly string[],
  options: Pick<LimitsOptions, 'white' | 'watch'> = {},
): { readonly without: number; readonly gains: readonly TubeGain[] } {
  const rest = palette.tubes.map((t) => t.id).filter((id) => !chosen.includes(id));
  if (rest.length === 0) {
    throw new MixProblem(say('all-in-use'));
  }
  const volumeOf = (ids: readonly string[]): number => {
    const set = tubeSet(palette, { only: ids, ...(options.white ? { white: options.white } : {}) });
    const edge = edgeSearch(set);
    const dark = darkest(edge).value;
    const light = lightest(edge).value;
    const values = [2, 3.5, 5, 6.5, 8, 9].filter((v) => v > dark + ENDS && v < light - ENDS);
    return slicesVolume(valueSlices(edge, values, COARSE_HUES), dark, light);
  };
  const without = volumeOf(chosen);
  const gains = rest.map((tube, i) => {
    heed(options.watch, i, rest.length);
    const volume = volumeOf([...chosen, tube]);
    return { tube, volume, gain: without > 0 ? volume / without - 1 : Infinity };
  });
  return { without, gains: gains.toSorted((a, b) => b.volume - a.volume || (a.tube < b.tube ? -1 : 1)) };
}
