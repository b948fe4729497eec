import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { WARM_HUE_DEGREES } from '../../colour/lean.ts';
import { type MixingPalette, labelOf } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { edgeSearch, valueLOf } from '../limits/edge-search.ts';
import { darkest, lightest } from '../limits/edges.ts';
import { searchOn } from '../search/come-down.ts';
import { gramsOf } from '../match/recipe.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { type Pour, pourRecipe } from '../pour/pour-recipe.ts';
import type { Scale } from '../pour/scale.ts';
import { MixProblem, type Watch } from '../problem.ts';
import { type TubeSet, tubeIndex, tubeSet } from '../tube-set.ts';
import { familyAlong } from './family-along.ts';
import { shareOfValue } from './tint-of-value.ts';
import { say } from '../sentences.ts';

/** An end of a string: a Munsell value, a mix (its value is taken), or as far as the tubes go. */
export type StringEnd = { readonly value: number } | { readonly masses: Masses } | 'darkest' | 'lightest';

/**
 * What runs along the string: neutrals; a fixed lean (CIELAB units, above zero warm) from neutral; or one tube let down
 * with the palette's white.
 */
export type StringKind = 'neutral' | { readonly lean: number } | { readonly tube: string };

export interface ValueStringOptions {
  /** @default 9 */
  readonly steps?: number;
  /** @default 'darkest' */
  readonly from?: StringEnd;
  /** @default 'lightest' */
  readonly to?: StringEnd;
  /** @default 'neutral' */
  readonly kind?: StringKind;
  /** Most tubes in one step. @default 4 */
  readonly maxTubes?: number;
  /** Grams of each step. @default 10 */
  readonly grams?: number;
  /** Given: each step is also sought in whole steps of it. */
  readonly scale?: Scale;
  readonly white?: WhiteName;
  readonly only?: readonly string[];
  readonly watch?: Watch;
}

export interface StringStep {
  /** The Munsell value asked for. */
  readonly value: number;
  /** Grams by tube id; undefined where these tubes have no such value. */
  readonly masses?: Masses;
  readonly prediction?: MixPrediction;
  /** The step as the scale can weigh it, its value first; where a scale was given. */
  readonly pour?: Pour;
  /** False where the string's own tubes could not make the step and others had to. */
  readonly ofFamily: boolean;
}

export interface ValueString {
  readonly steps: readonly StringStep[];
  /** What could not be had, in words; empty when all is well. */
  readonly warnings: readonly string[];
}

const MOST_STEPS = 60;
/** A share this small is left out of a step. */
const TRACE = 1e-6;
/** A tube let down with white reaches its own ends exactly; an end asked for by value may lie this far outside them. */
const END_SLACK = 1e-6;

function endValue(set: TubeSet, end: StringEnd, kind: StringKind): number {
  if (end === 'darkest' || end === 'lightest') {
    const ids = typeof kind === 'object' && 'tube' in kind ? [kind.tube, set.palette.white] : set.ids;
    const edge = edgeSearch(tubeSet(set.palette, { white: set.white, only: ids }));
    return end === 'darkest' ? darkest(edge).value + END_SLACK : lightest(edge).value - END_SLACK;
  }
  const value = 'value' in end ? end.value : predictMix(set.palette, end.masses).value;
  if (!(value >= 0 && value <= 10)) {
    throw new MixProblem(say('string-value', { value }));
  }
  return value;
}

/**
 * N equal steps of Munsell value between two ends, each with its recipe and interval. Neutral and leaning strings are
 * mixed from one family of tubes throughout where one can do it.
 * @throws MixProblem for ends off the scale, fewer than two steps, unknown tubes.
 * @throws MixingStopped
 */
export function valueString(palette: MixingPalette, options: ValueStringOptions = {}): ValueString {
  const {
    steps = 9,
    from = 'darkest',
    to = 'lightest',
    kind = 'neutral',
    maxTubes = 4,
    grams = 10,
  } = options;
  if (!(Number.isInteger(steps) && steps >= 2 && steps <= MOST_STEPS)) {
    throw new MixProblem(say('string-steps', { steps, most: MOST_STEPS }));
  }
  if (!(grams > 0)) throw new MixProblem(say('string-grams', { grams }));
  const white = options.white ?? DEFAULT_WHITE;
  const set = tubeSet(palette, { white, ...(options.only ? { only: options.only } : {}) });
  const first = endValue(set, from, kind);
  const last = endValue(set, to, kind);
  const values = Array.from({ length: steps }, (_, i) => first + ((last - first) * i) / (steps - 1));
  const search = searchOn(set);
  const found =
    typeof kind === 'object' && 'tube' in kind
      ? letDown(set, kind.tube, values)
      : familyAlong(search, leaning(values, kind), Math.min(maxTubes, 4), {
          // A grey within one is a grey to the eye, and a tube less on the palette; a lean that was asked for is held.
          ...(kind === 'neutral' ? { near: SEEN } : {}),
          watch: options.watch,
        }).map(({ candidate, ofFamily }) => ({ mix: candidate, ofFamily }));
  const out = found.map(({ mix, ofFamily }, i): StringStep => {
    if (!mix) return { value: values[i]!, ofFamily };
    const weighed = gramsOf(set, mix.tubes, mix.parts, grams);
    const masses = Object.fromEntries(
      mix.tubes.flatMap((t, j) => (weighed[j]! > TRACE * grams ? [[set.ids[t]!, weighed[j]!]] : [])),
    );
    const prediction = predictMix(palette, masses, white);
    const pour = options.scale && pourStep(palette, masses, prediction, grams, options.scale);
    return { value: values[i]!, masses, prediction, ...(pour ? { pour } : {}), ofFamily };
  });
  return { steps: out, warnings: warningsOf(set, out, kind) };
}

/** A step in whole steps of the scale: as near to the exact one as can be, its value held. */
function pourStep(
  palette: MixingPalette,
  masses: Masses,
  exact: MixPrediction,
  grams: number,
  scale: Scale,
): Pour {
  return pourRecipe(palette, { spectrum: exact.reflectance }, masses, {
    grams,
    scale,
    priority: 'value',
    white: exact.lab.white,
  });
}

function leaning(
  values: readonly number[],
  kind: 'neutral' | { readonly lean: number },
): { L: number; a: number; b: number; valueL: number }[] {
  const by = kind === 'neutral' ? 0 : kind.lean;
  if (!Number.isFinite(by)) throw new MixProblem(say('string-lean', { lean: by }));
  const h = (WARM_HUE_DEGREES * Math.PI) / 180;
  return values.map((v) => {
    const valueL = valueLOf(v);
    return { L: valueL, a: by * Math.cos(h), b: by * Math.sin(h), valueL };
  });
}

interface Found {
  readonly mix: { readonly tubes: readonly number[]; readonly parts: Float64Array } | undefined;
  readonly ofFamily: boolean;
}

function letDown(set: TubeSet, tube: string, values: readonly number[]): Found[] {
  const pair = [tubeIndex(set, tube), tubeIndex(set, set.palette.white)];
  if (pair[0] === pair[1]) {
    throw new MixProblem(say('string-white', { tube: labelOf(set.palette, tube) }));
  }
  const search = searchOn(set);
  return values.map((value) => {
    const share = shareOfValue(search, pair[0]!, pair[1]!, valueLOf(value));
    return {
      mix: share === undefined ? undefined : { tubes: pair, parts: Float64Array.of(share, 1 - share) },
      ofFamily: true,
    };
  });
}

/** About the least difference seen edge to edge, CIEDE2000. Common practice, no source. */
const SEEN = 1;
/** Off the wanted lean by more than this is said, CIELAB units. */
const LEAN_SAID = 1;

function warningsOf(set: TubeSet, steps: readonly StringStep[], kind: StringKind): string[] {
  const warnings: string[] = [];
  const none = steps.filter((s) => !s.masses).map((s) => s.value.toFixed(2));
  if (none.length > 0) {
    const [low, high] = (['darkest', 'lightest'] as const).map((end) => endValue(set, end, kind));
    warnings.push(
      say('string-none', { values: none.join(', '), low: low!.toFixed(2), high: high!.toFixed(2) }),
    );
  }
  const others = steps.filter((s) => s.masses && !s.ofFamily).map((s) => s.value.toFixed(2));
  if (others.length > 0) warnings.push(say('string-others', { values: others.join(', ') }));
  if (typeof kind === 'object' && 'tube' in kind) return warnings;
  const by = kind === 'neutral' ? 0 : kind.lean;
  for (const { value, prediction } of steps) {
    if (!prediction) continue;
    const off = prediction.lean - by;
    if (Math.abs(off) > LEAN_SAID) {
      warnings.push(
        say('string-off', {
          value: value.toFixed(2),
          way: off > 0 ? 'warm' : 'cool',
          by: Math.abs(off).toFixed(1),
        }),
      );
    }
  }
  return warnings;
}
