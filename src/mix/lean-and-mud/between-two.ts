import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { type MixingPalette, labelOf } from '../../fit/palette.ts';
import { type EdgeMix, edgeSearch } from '../limits/edge-search.ts';
import { tubeIndex, tubeSet } from '../tube-set.ts';
import { MixProblem } from '../problem.ts';
import { say } from '../sentences.ts';

/** A mix on the way from one tube to another. */
export interface WayPoint extends EdgeMix {
  /** Share of the first tube by mass, 1..0. */
  readonly share: number;
}

/** How chroma collapses between two tubes. */
export interface MudBetween {
  readonly points: readonly WayPoint[];
  /** The point of least chroma. */
  readonly dullest: WayPoint;
  /** Its chroma over that of the duller of the two ends: 1 keeps all, 0 is grey. */
  readonly kept: number;
  readonly sentence: string;
}

/** Less than this share of chroma kept is called mud, this much of it fair. Our choice, no source. */
const MUD = 0.3;
const FAIR = 0.8;
/** A tube of less chroma than this has none worth losing, CIELAB units. Our choice, no source. */
const ALL_BUT_GREY = 5;

/**
 * Mixes from one tube to another and what becomes of their chroma. `points`: how many, evenly spaced in what the tubes
 * do rather than in mass, so that a strong tube does not crowd them to one end.
 * @throws MixProblem for unknown tubes, the same tube twice, or fewer than three points.
 */
export function betweenTwo(
  palette: MixingPalette,
  one: string,
  two: string,
  options: { readonly points?: number; readonly white?: WhiteName } = {},
): MudBetween {
  const { points = 41, white = DEFAULT_WHITE } = options;
  if (one === two) throw new MixProblem(say('with-itself', { tube: labelOf(palette, one) }));
  if (!(Number.isInteger(points) && points >= 3 && points <= 1000)) {
    throw new MixProblem(say('points', { count: points }));
  }
  const set = tubeSet(palette, { white, only: [one, two] });
  const edge = edgeSearch(set);
  const a = tubeIndex(set, one);
  const way = Array.from({ length: points }, (_, i): WayPoint => {
    const x = new Float64Array(2);
    x[a] = 1 - i / (points - 1);
    x[1 - a] = i / (points - 1);
    const mix = edge.mixOf(x);
    return { ...mix, share: mix.shares[one] ?? 0 };
  });
  const dullest = way.reduce((p, q) => (q.chroma < p.chroma ? q : p));
  const [first, last] = [way[0]!.chroma, way.at(-1)!.chroma];
  const ends = Math.min(first, last);
  const kept = ends > 0 ? Math.min(1, dullest.chroma / ends) : 1;
  const names = { one: labelOf(palette, one), two: labelOf(palette, two) };
  const at = say('share-of', { percent: Math.round(100 * dullest.share), tube: names.one });
  const dull = dullest.chroma.toFixed(0);
  const sentence = (): string => {
    if (Math.max(first, last) < ALL_BUT_GREY) return say('both-grey', names);
    if (ends < ALL_BUT_GREY) {
      const [grey, other] = first < last ? [names.one, names.two] : [names.two, names.one];
      return say('one-grey', { grey, other });
    }
    if (kept >= FAIR) return say('mixes-cleanly', { ...names, chroma: dull });
    if (kept >= MUD) return say('dull-each-other', { ...names, at, chroma: dull });
    return say('kill-each-other', { ...names, at, chroma: dull, value: dullest.value.toFixed(1) });
  };
  return { points: way, dullest, kept, sentence: sentence() };
}
