/**
 * The weighing plan of a ladder: grams of tube and white, or of a rung already mixed, for a scale and a wanted error.
 *
 * Straight: sd of ln(paint/white) = d/sqrt(6) x sqrt(1/m_paint^2 + 1/m_white^2) (ratios.ts). In a weak tint the paint
 * is a small pour and its error rules: 1:16 of 2 g on a 0.01 g scale is 3.5 %. Letting down an earlier rung makes the
 * small pour large, at the price of carrying that rung's error.
 */
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import {
  DEFAULT_WANTED_SIGMA,
  type PlanRequest,
  type PlannedPour,
  type PlannedRung,
  type WeighingPlan,
} from './plan-shapes.ts';
import { type SizeLimits, type SizedStep, type Step, sizeSteps } from './plan-sizes.ts';
import { rungName } from './rung-name.ts';
import { say } from './sentences.ts';

/** With more tints than this a plan for least paint looks at the two plain ways only. */
const MOST_TRIED = 4;
/** Above this a pile is more than most will mix with a knife. Common practice, no source. */
const LARGE_PILE_GRAMS = 20;

/**
 * Plans a ladder.
 * @throws ReadingRefused `entry` when there is no masstone, two rungs are alike, or a size is not above zero
 */
export function planLadder(request: PlanRequest): WeighingPlan {
  const parts = orderedParts(request);
  const limits: SizeLimits = {
    resolution: request.scaleResolution,
    smallestPour: request.smallestPour,
    perRung: request.perRung,
    wantedSigma: request.wantedSigma ?? DEFAULT_WANTED_SIGMA,
  };
  const tried = ways(parts, request.method).map((steps) => sizeSteps(steps, limits));
  const cost = (sized: readonly SizedStep[]): number =>
    sized.reduce((sum, s) => sum + s.white + (s.from < 0 ? s.taken : 0), 0);
  const good = tried.filter((sized) => sized.every((s) => s.ratioSigma <= limits.wantedSigma));
  const worst = (sized: readonly SizedStep[]): number => Math.max(...sized.map((s) => s.ratioSigma));
  // A gram in a hundred is not worth a worse ratio; where no way reaches the wish, the surest one is taken.
  const better = (two: SizedStep[], one: SizedStep[]): boolean =>
    good.length === 0
      ? worst(two) < worst(one)
      : cost(two) < cost(one) * 0.99 || (cost(two) < cost(one) * 1.01 && worst(two) < worst(one));
  const best = (good.length ? good : tried).reduce((one, two) => (better(two, one) ? two : one));
  return describe(best, limits, cost(best), request.method === 'least paint' ? tried.map(cost) : []);
}

function orderedParts(request: PlanRequest): number[] {
  const { whiteParts, scaleResolution, smallestPour, perRung, wantedSigma } = request;
  const refuse = (sentence: string): never => {
    throw new ReadingRefused('entry', sentence);
  };
  const sizes = {
    [say('scale-step')]: scaleResolution,
    [say('smallest-pour')]: smallestPour,
    [say('paint-per-rung')]: perRung,
  };
  for (const [name, grams] of Object.entries(sizes)) {
    if (!(grams > 0 && Number.isFinite(grams))) refuse(say('grams-above-zero', { what: name, grams }));
  }
  if (wantedSigma !== undefined && !(wantedSigma >= 0.0005 && wantedSigma <= 0.2)) {
    refuse(say('wanted-sigma', { wanted: perCent(wantedSigma) }));
  }
  const parts = whiteParts.toSorted((a, b) => a - b);
  const odd = parts.find((k) => !(k >= 0 && Number.isFinite(k)));
  if (odd !== undefined) refuse(say('no-parts', { parts: odd }));
  if (parts[0] !== 0) refuse(say('needs-masstone'));
  const twice = parts.find((k, i) => i > 0 && k === parts[i - 1]);
  if (twice !== undefined) refuse(say('rung-twice', { rung: rungName(twice) }));
  return parts;
}

/** The ways to look at: for each tint, let down from the tube or from an earlier tint. */
function ways(parts: readonly number[], method: PlanRequest['method']): Step[][] {
  const step = (from: (i: number) => number): Step[] =>
    parts.map((whiteParts, i) => ({ whiteParts, from: i < 2 ? -1 : from(i) }));
  const straight = step(() => -1);
  const serial = step((i) => i - 1);
  if (method === 'straight') return [straight];
  if (method === 'serial') return [serial];
  if (parts.length - 1 > MOST_TRIED) return [straight, serial];
  let all: Step[][] = [[]];
  parts.forEach((whiteParts, i) => {
    const froms = [-1, ...Array.from({ length: Math.max(0, i - 1) }, (_, j) => j + 1)];
    all = all.flatMap((steps) => froms.map((from) => [...steps, { whiteParts, from }]));
  });
  return all;
}

function describe(
  sized: readonly SizedStep[],
  limits: SizeLimits,
  total: number,
  costs: readonly number[],
): WeighingPlan {
  const names = sized.map((s) => rungName(s.whiteParts));
  const shares: number[] = [];
  const rungs = sized.map((s, i): PlannedRung => {
    const first: PlannedPour =
      s.from < 0 ? { kind: 'paint', grams: s.taken } : { kind: 'rung', rung: names[s.from]!, grams: s.taken };
    const totalGrams = round(s.taken + s.white);
    const goneOn = sized.reduce((sum, other) => sum + (other.from === i ? other.taken : 0), 0);
    const share = ((s.from < 0 ? 1 : shares[s.from]!) * s.taken) / totalGrams;
    shares.push(share);
    return {
      name: names[i]!,
      whiteParts: s.whiteParts,
      pours: s.white > 0 ? [first, { kind: 'white', grams: s.white }] : [first],
      totalGrams,
      leftGrams: round(totalGrams - goneOn),
      share,
      ratioSigma: s.ratioSigma,
      // share = r / (1 + r) for the ratio r: d ln share = (1 - share) d ln r.
      shareRelativeSigma: (1 - share) * s.ratioSigma,
    };
  });
  const tints = sized.filter((s) => s.whiteParts > 0).slice(1);
  const serial = tints.filter((s) => s.from >= 0).length;
  const worst = rungs.reduce((one, two) => (two.ratioSigma > one.ratioSigma ? two : one));
  const tubeGrams = round(sized.reduce((sum, s) => sum + (s.from < 0 ? s.taken : 0), 0));
  const whiteGrams = round(sized.reduce((sum, s) => sum + s.white, 0));
  return {
    method: serial === 0 ? 'straight' : serial === tints.length ? 'serial' : 'mixed',
    scaleResolution: limits.resolution,
    smallestPour: limits.smallestPour,
    wantedSigma: limits.wantedSigma,
    rungs,
    tubeGrams,
    whiteGrams,
    worstRelativeSigma: worst.ratioSigma,
    sentences: sentences({ rungs, worst, tubeGrams, whiteGrams, limits, serial, total, costs }),
  };
}

function sentences(p: {
  rungs: readonly PlannedRung[];
  worst: PlannedRung;
  tubeGrams: number;
  whiteGrams: number;
  limits: SizeLimits;
  serial: number;
  total: number;
  costs: readonly number[];
}): string[] {
  const said = [say('takes', { tube: grams(p.tubeGrams), white: grams(p.whiteGrams) })];
  if (p.worst.ratioSigma > 0) {
    said.push(
      say('least-sure', {
        rung: p.worst.name,
        sigma: perCent(p.worst.ratioSigma),
        resolution: p.limits.resolution,
      }),
    );
  }
  if (p.worst.ratioSigma > p.limits.wantedSigma) {
    said.push(say('not-reached', { wanted: perCent(p.limits.wantedSigma) }));
  }
  if (p.serial > 0) {
    said.push(say('let-down-first'));
  }
  const most = Math.max(0, ...p.costs);
  if (most > p.total * 1.05) {
    said.push(say('most-wasteful', { most: grams(most), this: grams(p.total) }));
  }
  const large = p.rungs.find((r) => r.totalGrams > LARGE_PILE_GRAMS);
  if (large) {
    said.push(say('large-pile', { rung: large.name, grams: grams(large.totalGrams) }));
  }
  said.push(say('weigh-what-comes'));
  return said;
}

const round = (g: number): number => Number(g.toFixed(9));
const grams = (g: number): string => `${g.toFixed(2)} g`;
