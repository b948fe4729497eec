/**
 * Proportions of weighed swatches and how their errors hang together. Every weighing is one independent error; a
 * pile made from another inherits the other's errors, so rungs made by serial dilution err together. First-order
 * propagation (JCGM 100:2008, 5.1.2), carried as a factor: ln m_t = ln m_t(nominal) + sum_k f_tk e_k, e_k standard
 * normal.
 *
 * A net mass is the difference of two readings of a scale that rounds to its resolution d, each off by a uniform
 * error of variance d^2/12; so one weighing has the standard deviation d / sqrt(6).
 */
import type { Swatch, Weighing } from '../swatch-set/schema.ts';

/** Standard deviation of a net mass, g, on a scale of the given resolution, g. */
export function massSigma(resolutionGrams: number): number {
  return resolutionGrams / Math.sqrt(6);
}

/** Standard deviation of ln(paint/white) for one straight pour. Grams. */
export function straightRatioSigma(paint: number, white: number, resolutionGrams: number): number {
  return massSigma(resolutionGrams) * Math.hypot(1 / paint, 1 / white);
}

/** Used where a set does not say how it was weighed. Common practice, no source. */
export const ASSUMED_RELATIVE_SIGMA = 0.01;

export interface WeighedSwatch {
  readonly id: string;
  /** Mass per tube id, in the swatch's own unit. Tubes of mass zero are left out. */
  readonly masses: ReadonlyMap<string, number>;
  /** Share per tube id, sum 1. */
  readonly shares: ReadonlyMap<string, number>;
  /** d ln m_tube per error source (`sources` numbers). Tubes as in `masses`. */
  readonly sensitivity: ReadonlyMap<string, Float64Array>;
}

export interface LadderRatios {
  readonly swatches: readonly WeighedSwatch[];
  /** Number of independent errors; each is standard normal. */
  readonly sources: number;
  /** The weighing was not stated and 1 % was assumed. */
  readonly assumed: boolean;
}

type Painted = Pick<Swatch, 'id'> & { readonly masses?: Swatch['masses']; readonly made?: Swatch['made'] };

/**
 * Masses, shares and error factors of swatches given by `masses` or `made`, in the order given. A pile may be made
 * from one that stands later in the list.
 * @throws RangeError naming the swatch: made from an unknown one, in a circle, or without any paint
 */
export function ladderRatios(swatches: readonly Painted[], weighing: Weighing | undefined): LadderRatios {
  const byId = new Map(swatches.map((s) => [s.id, s]));
  const done = new Map<string, { masses: Map<string, number>; own: Map<string, Map<number, number>> }>();
  const open = new Set<string>();
  let sources = 0;

  /** Relative standard deviation of one weighed pour. */
  const relative = (grams: number): number => {
    if (weighing && 'resolution' in weighing) return massSigma(weighing.resolution) / grams;
    // Two pours of this make a ratio with the stated sigma.
    return (weighing?.relativeSigma ?? ASSUMED_RELATIVE_SIGMA) / Math.SQRT2;
  };

  const weigh = (id: string) => {
    const known = done.get(id);
    if (known) return known;
    const swatch = byId.get(id);
    if (!swatch)
      throw new RangeError(`A pile is made from "${id}", which is not among the swatches; add it.`);
    if (open.has(id))
      throw new RangeError(`"${id}" is made from itself by way of others; mend its \`made\`.`);
    open.add(id);
    const masses = new Map<string, number>();
    // d m_t per source, in grams.
    const moved = new Map<string, Map<number, number>>();
    const add = (tube: string, grams: number, changes: Iterable<readonly [number, number]>): void => {
      masses.set(tube, (masses.get(tube) ?? 0) + grams);
      const at = moved.get(tube) ?? new Map<number, number>();
      moved.set(tube, at);
      for (const [k, f] of changes) at.set(k, (at.get(k) ?? 0) + grams * f);
    };
    if (swatch.made) {
      for (const part of swatch.made) {
        const k = sources++;
        if ('tube' in part) add(part.tube, part.grams, [[k, relative(part.grams)]]);
        else addPile(weigh(part.from), part.grams, k, relative(part.grams), add);
      }
    } else {
      const poured = Object.entries(swatch.masses ?? {}).filter(([, grams]) => grams > 0);
      for (const [tube, grams] of poured) {
        add(tube, grams, poured.length > 1 ? [[sources++, relative(grams)]] : []);
      }
    }
    if (masses.size === 0) throw new RangeError(`"${id}" holds no paint; give its masses in grams.`);
    const own = new Map(
      [...moved].map(([tube, at]) => [tube, new Map([...at].map(([k, v]) => [k, v / masses.get(tube)!]))]),
    );
    open.delete(id);
    const result = { masses, own };
    done.set(id, result);
    return result;
  };

  const weighed = swatches.map((s) => ({ id: s.id, ...weigh(s.id) }));
  return {
    sources,
    assumed: weighing === undefined,
    swatches: weighed.map(({ id, masses, own }) => {
      const total = [...masses.values()].reduce((sum, m) => sum + m, 0);
      return {
        id,
        masses,
        shares: new Map([...masses].map(([tube, m]) => [tube, m / total])),
        sensitivity: new Map(
          [...own].map(([tube, at]) => {
            const row = new Float64Array(sources);
            for (const [k, f] of at) row[k] = f;
            return [tube, row];
          }),
        ),
      };
    }),
  };
}

type Pile = { masses: Map<string, number>; own: Map<string, Map<number, number>> };

/** Adds `grams` of a pile: its shares, with its own errors less their common part (shares sum to 1), and the pour's. */
function addPile(
  pile: Pile,
  grams: number,
  source: number,
  relative: number,
  add: (tube: string, grams: number, changes: Iterable<readonly [number, number]>) => void,
): void {
  const total = [...pile.masses.values()].reduce((sum, m) => sum + m, 0);
  const common = new Map<number, number>();
  for (const [tube, m] of pile.masses) {
    for (const [k, f] of pile.own.get(tube) ?? []) common.set(k, (common.get(k) ?? 0) + (m / total) * f);
  }
  for (const [tube, m] of pile.masses) {
    const changes = new Map<number, number>([[source, relative]]);
    for (const [k, f] of common) changes.set(k, -f);
    for (const [k, f] of pile.own.get(tube) ?? []) changes.set(k, (changes.get(k) ?? 0) + f);
    add(tube, (grams * m) / total, changes);
  }
}

/** ln(paint/white) of each swatch that holds both, with the covariance of their errors. */
export interface LnRatios {
  readonly ids: readonly string[];
  readonly lnRatio: Float64Array;
  /** Symmetric, one row per id. */
  readonly covariance: Float64Array[];
}

export function lnRatiosOf(ratios: LadderRatios, paint: string, white: string): LnRatios {
  const both = ratios.swatches.filter((s) => s.masses.has(paint) && s.masses.has(white));
  const factors = both.map((s) => {
    const [p, w] = [s.sensitivity.get(paint)!, s.sensitivity.get(white)!];
    return p.map((v, k) => v - w[k]!);
  });
  return {
    ids: both.map((s) => s.id),
    lnRatio: Float64Array.from(both, (s) => Math.log(s.masses.get(paint)! / s.masses.get(white)!)),
    covariance: factors.map((f) =>
      Float64Array.from(factors, (g) => f.reduce((sum, v, k) => sum + v * g[k]!, 0)),
    ),
  };
}
