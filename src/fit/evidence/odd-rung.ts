/**
 * Rungs whose reading is not what the other rungs of the tube foretell: two swatches exchanged, a veil over one (a
 * fingerprint, a sunk patch), a wet film among dry ones. Each rung is left out in turn; what the others then have against
 * it is twice the rise in cost when it is put back, which is a chi-square with one degree for each of its readings.
 */
import { costAt } from '../model/linearise.ts';
import type { FitProblem, Group } from '../model/problem.ts';
import { groupWeights } from '../model/weights.ts';
import type { Solution } from '../solve/solve-palette.ts';
import { fitBlock } from '../solve/fit-block.ts';
import { withoutGroup } from './leave-out.ts';
import { say } from '../sentences.ts';

export interface OddRung {
  readonly swatches: readonly string[];
  readonly tube: string;
  readonly what: 'exchanged' | 'veiled' | 'wet' | 'unlike';
  readonly words: string;
}

/** Usual misfit of the equations, ln(K/S); a rung that is odd must not excuse itself by a large misfit of its own tube. */
const USUAL = 0.015;
/** Standard normal equivalent of the chi-square from which a rung is asked about. Set on clean invented ladders. */
const ASKED = 5;
/** The same for a rung no cause explains, which may be the equations' own error. Set on a clean set of transfer paints. */
const ASKED_WITHOUT_CAUSE = 8;
/** Share of what is against a rung that a cause must take away to be named. */
const EXPLAINS = 0.7;
/** Veil tried, reflectance factor. */
const VEIL = 0.01;
/** Rungs of a tube that must stand beside a suspect. */
const LEAST_BESIDE = 3;

/** The odd rungs of a solution, at most one of a tube (two where they were exchanged): the oddest. */
export function oddRungs(problem: FitProblem, solution: Solution): OddRung[] {
  const { layout, set } = problem;
  const sorted = [...solution.discrepancy.blocks, USUAL].toSorted((a, b) => a - b);
  const usual = Math.max(USUAL, sorted[Math.floor(sorted.length / 2)]!);
  const sds = {
    ...solution.discrepancy,
    blocks: solution.discrepancy.blocks.map((sd) => Math.min(sd, usual)),
  };
  const weights = groupWeights(problem, solution.x, sds);
  const strict = { ...solution, weights };
  const found: OddRung[] = [];
  layout.blocks.forEach(({ tubes }, b) => {
    if (tubes.length !== 1) return;
    const groups = problem.groups.flatMap((g, k) => (layout.blockOfPile[g.pile] === b ? [k] : []));
    if (groups.length <= LEAST_BESIDE) return;
    const all = new Set(groups);
    const whole = (at: FitProblem): number =>
      costAt(at, weights, fitBlock(at, weights, solution.x, b, all), all, b);
    const together = whole(problem);
    const suspects = groups.flatMap((g) => {
      const left = withoutGroup(problem, strict, g);
      if (!left) return [];
      const others = new Set(groups.filter((k) => k !== g));
      const against = 2 * (together - costAt(problem, weights, left, others, b));
      return [{ g, against, z: asNormal(against, readingsIn(problem.groups[g]!, problem)) }];
    });
    const worst = suspects.toSorted((p, q) => q.z - p.z)[0];
    if (!worst || worst.z < ASKED) return;
    const id = set.tubes[tubes[0]!]!.id;
    const name = (g: number): string => problem.groups[g]!.swatches[0]!.swatch.id;
    const excess = worst.against - readingsIn(problem.groups[worst.g]!, problem);
    const exchanged = groups
      .filter((k) => k !== worst.g && sameShape(problem.groups[k]!, problem.groups[worst.g]!))
      .map((k) => ({ k, fall: 2 * (together - whole(exchange(problem, worst.g, k))) }))
      .toSorted((p, q) => q.fall - p.fall)[0];
    if (exchanged && exchanged.fall > EXPLAINS * excess) {
      const pair = [worst.g, exchanged.k];
      found.push({
        swatches: pair.flatMap((k) => problem.groups[k]!.swatches.map((s) => s.swatch.id)),
        tube: id,
        what: 'exchanged',
        words: say('exchanged', { one: name(worst.g), two: name(exchanged.k) }),
      });
      return;
    }
    const veil = bestVeil(together, (v) => whole(veiled(problem, worst.g, v)));
    const what = veil.fall > EXPLAINS * excess ? (veil.at > 0 ? 'veiled' : 'wet') : 'unlike';
    if (what === 'unlike' && worst.z < ASKED_WITHOUT_CAUSE) return;
    found.push({
      swatches: problem.groups[worst.g]!.swatches.map((s) => s.swatch.id),
      tube: id,
      what,
      words: oddWords(name(worst.g), what, veil.at),
    });
  });
  return found;
}

function oddWords(name: string, what: OddRung['what'], veil: number): string {
  const percent = `${(100 * Math.abs(veil)).toFixed(1)} %`;
  switch (what) {
    case 'veiled':
      return say('veiled', { rung: name, percent });
    case 'wet':
      return say('even-darker', { rung: name, percent });
    default:
      return say('odd-rung', { rung: name });
  }
}

function readingsIn(group: Group, problem: FitProblem): number {
  return group.swatches.length * problem.channels;
}

/** A chi-square as a standard normal number, by Wilson and Hilferty's cube root (Proc. Natl. Acad. Sci. 17 (1931) 684). */
function asNormal(square: number, n: number): number {
  return (Math.cbrt(Math.max(0, square) / n) - (1 - 2 / (9 * n))) / Math.sqrt(2 / (9 * n));
}

function sameShape(a: Group, b: Group): boolean {
  return (
    a.swatches.length === b.swatches.length && a.swatches.every((s, i) => s.card === b.swatches[i]!.card)
  );
}

function withGroups(problem: FitProblem, groups: Group[]): FitProblem {
  return { ...problem, groups };
}

function exchange(problem: FitProblem, g: number, k: number): FitProblem {
  const means = (from: number) => (s: Group['swatches'][number], i: number) => ({
    ...s,
    mean: problem.groups[from]!.swatches[i]!.mean,
  });
  return withGroups(
    problem,
    problem.groups.map((group, i) =>
      i === g || i === k ? { ...group, swatches: group.swatches.map(means(i === g ? k : g)) } : group,
    ),
  );
}

function veiled(problem: FitProblem, g: number, veil: number): FitProblem {
  return withGroups(
    problem,
    problem.groups.map((group, i) =>
      i === g
        ? { ...group, swatches: group.swatches.map((s) => ({ ...s, mean: s.mean.map((v) => v - veil) })) }
        : group,
    ),
  );
}

/** The veil whose removal leaves least, and twice the cost it takes away: two parabolas through costs at hand. */
function bestVeil(none: number, cost: (veil: number) => number): { at: number; fall: number } {
  let at = 0;
  let step = VEIL;
  let least = none;
  for (let pass = 0; pass < 3; pass++) {
    const [a, m, c] = [cost(at - step), least, cost(at + step)];
    const bend = a - 2 * m + c;
    const move = bend > 0 ? Math.max(-4, Math.min(4, (0.5 * (a - c)) / bend)) * step : a < c ? -step : step;
    const value = cost(at + move);
    if (value < least) [at, least] = [at + move, value];
    step /= 4;
  }
  return { at, fall: 2 * (none - least) };
}
