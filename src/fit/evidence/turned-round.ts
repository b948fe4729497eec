/**
 * A rung whose two masses were noted the wrong way round. In a ladder of few rungs it pulls the whole tube after it, so that
 * an honest neighbour looks wrong, or two swatches look exchanged. So wherever a tube looks wrong in any way, each of its
 * rungs is turned round in turn and the tube fitted again with its white: the right mend leaves nothing to ask about.
 */
import { pilesOf } from '../../calibrate/swatch-set/piles.ts';
import type { Swatch, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import type { LeftOutRung } from '../palette-fit.ts';
import type { Solution } from '../solve/solve-palette.ts';
import { oddRungs } from './odd-rung.ts';
import { swatchEvidence } from './swatch-evidence.ts';
import { FORETOLD, chanceOfMistake, wrongRatioWords, wrongRatios } from './wrong-ratio.ts';

/** Nearer to 1:1 than this, turned masses look like none. This project's choice. */
const LEAST_LN_RATIO = Math.log(1.5);
/** Share of the squared differences (CIEDE2000) that a mend must take away. This project's choice. */
const MENDS = 0.75;

/**
 * The rung of a tube whose masses were noted the wrong way round, or nothing.
 * @param without ids of swatches already left out
 * @param exchanged ids of two swatches of the tube that may have changed places, which is the rival explanation
 * @param solve fits a document as the palette is fitted
 */
export function turnedRound(
  set: SwatchSet,
  tubeId: string,
  exchanged: readonly string[] | undefined,
  without: ReadonlySet<string>,
  solve: (set: SwatchSet) => Solution,
): LeftOutRung | undefined {
  const white = set.tubes.find((t) => t.role === 'white')!.id;
  const among = new Set([tubeId, white]);
  const own = set.swatches.filter((s) => tubesOf(s, set).every((id) => among.has(id)));
  const part: SwatchSet = { ...set, tubes: set.tubes.filter((t) => among.has(t.id)), checks: [] };
  const solved = (swatches: readonly Swatch[]): { solution: Solution; left: number } => {
    const solution = solve({ ...part, swatches: [...swatches] });
    const evidence = swatchEvidence(solution.problem, solution, false);
    return { solution, left: evidence.reduce((sum, e) => sum + e.fitted.deltaE00 ** 2, 0) };
  };
  const { pileOf } = pilesOf(set);
  const turnable = own.filter(
    (s) => !without.has(s.id) && Math.abs(Math.log(partsWhite(s, tubeId, white))) > LEAST_LN_RATIO,
  );
  const tries = [...new Set(turnable.map((s) => pileOf.get(s.id)!))].map((pile) => {
    const swatches = turnable.filter((s) => pileOf.get(s.id) === pile);
    return { swatches, ...solved(own.map((s) => (swatches.includes(s) ? turned(s, tubeId, white) : s))) };
  });
  const best = tries.toSorted((a, b) => a.left - b.left)[0];
  if (!best || best.left > (1 - MENDS) * solved(own).left) return;
  const { solution, swatches } = best;
  if (oddRungs(solution.problem, solution).length || wrongRatios(solution.problem, solution).length) return;
  const [a, b] = (exchanged ?? []).map((id) => own.find((s) => s.id === id));
  if (a && b) {
    const back = own.map((s) =>
      s === a ? { ...s, readings: b.readings } : s === b ? { ...s, readings: a.readings } : s,
    );
    if (solved(back).left < best.left) return;
  }
  const { id } = swatches[0]!;
  const weighed = partsWhite(swatches[0]!, tubeId, white);
  const evidence = swatchEvidence(solution.problem, solution, false).find((e) => e.fitted.id === id)!;
  const t = solution.problem.set.tubes.findIndex((tube) => tube.id === tubeId);
  const readsLike = Math.exp(-evidence.rung(t).lnRatioError) / weighed;
  const probability = chanceOfMistake(Math.log(readsLike / weighed), FORETOLD);
  const tube = set.tubes.find((one) => one.id === tubeId)!;
  const words = wrongRatioWords({ rung: id, tube, weighed, readsLike, probability, swapped: true });
  return {
    swatches: swatches.map((s) => s.id),
    tube: tubeId,
    weighed,
    readsLike,
    probability,
    swapped: true,
    words,
  };
}

/** Grams of the two tubes of a swatch weighed from tubes alone; 0 of what is not in it. */
function gramsOf({ masses, made }: Swatch, id: string): number {
  if (masses) return masses[id] ?? 0;
  return made?.reduce((sum, step) => ('tube' in step && step.tube === id ? sum + step.grams : sum), 0) ?? 0;
}

/** Parts of white to one of the tube; 1, which turned round is the same, where a swatch was not weighed of the two. */
function partsWhite(swatch: Swatch, tube: string, white: string): number {
  const ratio = gramsOf(swatch, white) / gramsOf(swatch, tube);
  return ratio > 0 && Number.isFinite(ratio) ? ratio : 1;
}

function turned(swatch: Swatch, tube: string, white: string): Swatch {
  const { made: _made, ...rest } = swatch;
  return { ...rest, masses: { [tube]: gramsOf(swatch, white), [white]: gramsOf(swatch, tube) } };
}

/** Ids of the tubes in a swatch, through dilutions. */
function tubesOf({ masses = {}, made = [] }: Swatch, set: SwatchSet): string[] {
  return [
    ...Object.keys(masses).filter((id) => masses[id]! > 0),
    ...made.flatMap((step) => {
      if ('tube' in step) return [step.tube];
      const source = set.swatches.find((s) => s.id === step.from);
      return source ? tubesOf(source, set) : [];
    }),
  ];
}
