/**
 * A bridge between two whites. Constants are relative to the scattering of the white they were fitted with, so that
 * tubes of two profiles can only stand in one palette once the two whites' scattering has been compared:
 *   K_i / S_A = (K_i / S_B) (S_B / S_A),   and S likewise; this project's own derivation, one factor a wavelength.
 * S_B / S_A comes from a swatch set with both whites in it, one strong dark tube let down with each: the dark tube's K
 * is the same in both tints, so their difference is that of the whites (the relative tinting strength of whites, after
 * the idea of ASTM D332, from memory). Two whites mixed with each other say nothing where they read alike: S shows only where K/S differs.
 */
import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import { GRID_NM, GRID_SIZE } from '../../colour/grid.ts';
import { fitPalette } from '../../fit/fit-palette.ts';
import { crowdingFactor } from '../../fit/mixture.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { ProfileProblem } from '../problem.ts';
import { fewerColumns } from './fewer-columns.ts';
import { type Bridge, WHAT_TO_MEASURE } from './bridge-type.ts';
import { say } from '../sentences.ts';

/** A bridge is refused where the ratio of the whites stays less certain than this on average, 400-700 nm. Our choice. */
const MOST_DOUBT = 0.1;

export interface BridgeNames {
  /** Id of the second white in the swatch set. @default the second profile's white */
  readonly second?: string;
}

/**
 * The bridge from a swatch set whose white (role) is the first profile's white and which also holds the second's.
 * @param first, second palettes of the two profiles.
 * @throws ProfileProblem for another geometry, a set without one of the whites, or one that leaves their ratio open.
 */
export function bridgeFromSet(
  set: SwatchSet,
  first: MixingPalette,
  second: MixingPalette,
  names: BridgeNames = {},
): Bridge {
  const id = names.second ?? second.white;
  const white = set.tubes.find((t) => t.role === 'white');
  if (set.instrument.geometry !== first.geometry) {
    throw new ProfileProblem(
      say('bridge-geometry', { bridge: set.instrument.geometry, profiles: first.geometry }),
      'geometry',
    );
  }
  if (!white || white.id === id || !set.tubes.some((t) => t.id === id)) {
    throw new ProfileProblem(
      say('bridge-whites', {
        second: id,
        seen: set.tubes.map((t) => `"${t.id}"${t.role ? ' (white)' : ''}`).join(', '),
        what: WHAT_TO_MEASURE,
      }),
      'bridge',
    );
  }
  // The first profile's surface is kept: the bridge is to stand in that palette.
  const fit = fitPalette(set, { surface: first.surface, estimate: [], leaveOneOut: false }).palette;
  const [a, b] = [tubeOf(fit, white.id), tubeOf(fit, id)];
  const correction = crowdingCorrection(set, white.id, id, first.crowding ?? 0, second.crowding ?? 0);
  const half = (c: Float64Array | undefined): Float64Array =>
    c ? c.slice(GRID_SIZE) : new Float64Array(GRID_SIZE);
  const factor = fewerColumns([
    ...b.own.map(half),
    ...b.shared.map((c, j) => half(c).map((v, i) => v - half(a.shared[j])[i]!)),
    new Float64Array(GRID_SIZE).fill(correction.sd),
  ]);
  const lnRatio = b.lnS.map((v, i) => v - a.lnS[i]! + correction.ln);
  const seen = GRID_NM.flatMap((nm, i) => (nm >= 400 && nm <= 700 ? [i] : []));
  const variance = seen.reduce((s, i) => s + factor.reduce((v, c) => v + c[i]! ** 2, 0), 0) / seen.length;
  const doubt = Math.sqrt(variance);
  const mean = Math.exp(seen.reduce((s, i) => s + lnRatio[i]!, 0) / seen.length);
  if (doubt > MOST_DOUBT) {
    throw new ProfileProblem(
      say('bridge-weak', {
        percent: (100 * doubt).toFixed(0),
        allowed: 100 * MOST_DOUBT,
        what: WHAT_TO_MEASURE,
      }),
      'bridge',
    );
  }
  return {
    first: first.white,
    second: second.white,
    geometry: first.geometry,
    lnRatio,
    factor,
    lnKOverS: b.lnK.map((v, i) => v - b.lnS[i]!),
    words: say('bridge-words', { percent: (100 * mean).toFixed(0), sd: (200 * doubt).toFixed(0) }),
  };
}

/**
 * Whites scatter less where they crowd. The bridge's fit sees each white at its shares in the tints; the profiles'
 * units are the masstones: S(tint) = S(masstone) (1 + crowding (1 - c)). The spread of shares goes into the doubt.
 */
function crowdingCorrection(
  set: SwatchSet,
  first: string,
  second: string,
  crowdingA: number,
  crowdingB: number,
): { ln: number; sd: number } {
  const piles = pilesOf(set);
  const lnFactor = (id: string, crowding: number): { mean: number; sd: number } => {
    const t = piles.tubeIds.indexOf(id);
    const zero = new Float64Array(piles.errorCount);
    const all = set.swatches
      .map((s) => sharesOfPile(piles, piles.pileOf.get(s.id)!, zero).shares[t]!)
      .filter((c) => c > 0 && c < 1)
      .map((c) => Math.log(crowdingFactor(crowding, c)));
    if (all.length === 0) return { mean: 0, sd: 0 };
    const mean = all.reduce((s, v) => s + v, 0) / all.length;
    return { mean, sd: Math.sqrt(all.reduce((s, v) => s + (v - mean) ** 2, 0) / all.length) };
  };
  const a = lnFactor(first, crowdingA);
  const b = lnFactor(second, crowdingB);
  return { ln: a.mean - b.mean, sd: Math.hypot(a.sd, b.sd) };
}
