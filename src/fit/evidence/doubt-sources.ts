/**
 * What the doubt in a tube's mixtures comes from. The covariance of a prediction is a sum: this tube's own constants, what
 * it owes the white and the surface, the other tubes, and what the equations miss. Each part has its part of the mean
 * of CIEDE2000 squared.
 */
import { colourDoubt, covarianceOf } from '../advice/colour-doubt.ts';
import { DARK, LIGHT } from '../advice/lightness-range.ts';
import { mixturesOfTube } from '../advice/mixtures-of-a-tube.ts';
import { meanSquareOf } from '../lab-region.ts';
import type { MixingPalette } from '../palette.ts';
import { say } from '../sentences.ts';

export const DOUBT_SOURCES = ['own', 'shared', 'others', 'equations'] as const;
export type DoubtSource = (typeof DOUBT_SOURCES)[number];

export interface DoubtSources {
  /** Shares of the whole, 0..1, sum 1: own constants, white and surface, other tubes, what the equations miss. */
  readonly shares: Readonly<Record<DoubtSource, number>>;
  /** The greatest of them. */
  readonly dominant: DoubtSource;
  /** Mean CIEDE2000 that mixtures with this tube stay within 95 times in 100: all, and by L*; null where there are none. */
  readonly radius: number;
  readonly darks: number | null;
  readonly middles: number | null;
  readonly lights: number | null;
  /** One sentence. */
  readonly words: string;
}

const NAMED: Readonly<Record<DoubtSource, string>> = {
  own: say('doubt-curves'),
  shared: say('doubt-white'),
  others: say('doubt-others'),
  equations: say('doubt-equations'),
};

/** Where one range is this much more doubtful than the next, it is named. This project's choice. */
const MUCH_WORSE = 1.5;

/** @throws RangeError for a tube that the palette does not have. */
export function doubtSources(palette: MixingPalette, id: string): DoubtSources {
  const sums: Record<DoubtSource, number> = { own: 0, shared: 0, others: 0, equations: 0 };
  const seen = mixturesOfTube(palette, id).map((masses) => {
    const { lab, slopes, radius } = colourDoubt(palette, masses);
    const others = [...slopes.own].flatMap(([tube, columns]) => (tube === id ? [] : columns));
    const parts = {
      own: slopes.own.get(id) ?? [],
      shared: slopes.shared,
      others,
      equations: slopes.afresh,
    };
    for (const source of DOUBT_SOURCES) sums[source] += meanSquareOf(lab, covarianceOf(parts[source]));
    return { L: lab.L, radius };
  });
  const whole = DOUBT_SOURCES.reduce((sum, source) => sum + sums[source], 0);
  const share = (source: DoubtSource): number => (whole > 0 ? sums[source] / whole : 0);
  const shares = {
    own: share('own'),
    shared: share('shared'),
    others: share('others'),
    equations: share('equations'),
  };
  const dominant = DOUBT_SOURCES.reduce((a, b) => (shares[b] > shares[a] ? b : a));
  const mean = (from: number, to: number): number | null => {
    const inside = seen.filter(({ L }) => L >= from && L < to);
    return inside.length > 0 ? inside.reduce((sum, s) => sum + s.radius, 0) / inside.length : null;
  };
  const found = {
    shares,
    dominant,
    radius: mean(-Infinity, Infinity)!,
    darks: mean(-Infinity, DARK),
    middles: mean(DARK, LIGHT),
    lights: mean(LIGHT, Infinity),
  };
  return { ...found, words: wordsFor(found) };
}

function wordsFor({ shares, dominant, radius, ...ranges }: Omit<DoubtSources, 'words'>): string {
  const per = say('doubt-share', { percent: Math.round(100 * shares[dominant]), what: NAMED[dominant] });
  const places = (['darks', 'middles', 'lights'] as const)
    .flatMap((place) => (ranges[place] === null ? [] : [[place, ranges[place]] as const]))
    .toSorted((a, b) => b[1] - a[1]);
  const [worst, next] = places;
  const where =
    worst && next && worst[1] > MUCH_WORSE * next[1]
      ? say('worst-in', {
          where: worst[0] === 'middles' ? 'middle values' : worst[0],
          radius: worst[1].toFixed(1),
        })
      : '';
  return say('holds-within', { radius: radius.toFixed(1), worst: where, share: per });
}
