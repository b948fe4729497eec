import { ASSUMED_WEIGHING } from '../calibrate/swatch-set/piles.ts';
import type { SwatchSet } from '../calibrate/swatch-set/schema.ts';
import { filmsAndSurface } from './assemble/film-facts.ts';
import { paletteOfSolution } from './assemble/palette-of-solution.ts';
import { reducedChiSquares } from './evidence/chi-square.ts';
import { type OddRung, oddRungs } from './evidence/odd-rung.ts';
import { type SwatchEvidence, swatchEvidence } from './evidence/swatch-evidence.ts';
import { trustLine } from './evidence/trust.ts';
import { turnedRound } from './evidence/turned-round.ts';
import { wrongRatios } from './evidence/wrong-ratio.ts';
import type { SharedUnknown } from './model/layout.ts';
import { fitProblem } from './model/problem.ts';
import { SETTINGS, type FitSettings } from './model/settings.ts';
import type { Surface } from './optics/surface.ts';
import type { LeftOutRung, PaletteFit, TubeFit } from './palette-fit.ts';
import { type Solution, solvePalette } from './solve/solve-palette.ts';
import { say } from './sentences.ts';

export interface FitOptions {
  readonly settings?: Partial<FitSettings>;
  /** The surface to start from; theory's for the geometry where absent. */
  readonly surface?: Surface;
  /** Shared constants to estimate from the readings; the rest stay as theory has them. */
  readonly estimate?: readonly SharedUnknown[];
  /** Ids of swatches to leave out. */
  readonly without?: ReadonlySet<string>;
  /** Refit each tube once per rung, for `leftOutDeltaE00`. @default true */
  readonly leaveOneOut?: boolean;
  /** Fit again without rungs that were likely weighed wrong, exchanged, veiled or wet, and say which. @default true */
  readonly dropWrongRatios?: boolean;
}

/**
 * Shared constants estimated unless asked otherwise. The floor where it holds the mirror reflection, which theory knows
 * for a perfect gloss only; crowding where films hide, for a film's unknown thickness would pass for it.
 */
function estimatedFor(set: SwatchSet): SharedUnknown[] {
  const estimated: SharedUnknown[] = ['k2'];
  if (set.instrument.geometry === 'd/8 specular included') estimated.push('floor');
  if (set.swatches.every((s) => s.film === 'opaque')) estimated.push('crowding');
  return estimated;
}

/**
 * Fits every tube of a swatch set together: constants, their covariance, and the evidence for them. `checks` are never
 * looked at.
 * @throws RangeError where the document holds no swatches.
 */
export function fitPalette(set: SwatchSet, options: FitOptions = {}): PaletteFit {
  if (set.swatches.length === 0) {
    throw new RangeError(say('no-swatches'));
  }
  // A film read again when dry is the same film: its first reading counts, and the two are never averaged.
  const again = set.swatches.filter((s) => s.again !== undefined).map((s) => s.id);
  const without = new Set([...(options.without ?? []), ...again]);
  const settings = { ...SETTINGS[set.instrument.kind], ...options.settings };
  const solve = (part: SwatchSet): Solution =>
    solvePalette(
      fitProblem(part, {
        settings,
        estimate: options.estimate ?? estimatedFor(set),
        ...(options.surface ? { surface: options.surface } : {}),
        ...(without.size > 0 ? { without } : {}),
      }),
      settings.discrepancySd,
    );
  const solution = solve(set);
  const { problem } = solution;
  let unlike: readonly OddRung[] = [];
  if (options.dropWrongRatios ?? true) {
    const odd = oddRungs(problem, solution);
    const wrong = wrongRatios(problem, solution);
    const exchanged = odd.filter((o) => o.what === 'exchanged');
    // One rung turned round pulls the whole tube after it, so it is asked about first, of every tube that looks wrong.
    const turned = [...new Set([...odd, ...wrong].map(({ tube }) => tube))].flatMap(
      (id) => turnedRound(set, id, exchanged.find((o) => o.tube === id)?.swatches, without, solve) ?? [],
    );
    if (turned.length) return withoutRungs(set, options, turned);
    // Two rungs that changed places would each pass for one weighed wrong.
    if (exchanged.length) return withoutRungs(set, options, exchanged);
    if (wrong.length) return withoutRungs(set, options, wrong);
    const explained = odd.filter((o) => o.what !== 'unlike');
    if (explained.length) return withoutRungs(set, options, explained);
    unlike = odd;
  }
  const palette = paletteOfSolution(problem, solution);
  const evidence = swatchEvidence(problem, solution, options.leaveOneOut ?? true);
  const chiSquares = reducedChiSquares(problem, solution);
  const films = filmsAndSurface(problem, solution);
  const { report } = solution;
  const status = report.success ? ('converged' as const) : ('stopped' as const);
  const tubes = palette.tubes.map((constants): TubeFit => {
    const t = set.tubes.findIndex((tube) => tube.id === constants.id);
    const own = evidence.filter((e) => e.shares[t]! > 0 && (t !== problem.white || e.shares[t] === 1));
    const rungs = own.map((e) => e.rung(t));
    const block = problem.layout.blocks.findIndex((b) => b.tubes.includes(t));
    return {
      tube: set.tubes[t]!,
      constants,
      evidence: {
        readings: set.instrument.kind,
        rungs,
        reducedChiSquare: block < 0 ? 0 : chiSquares[block]!,
        status,
        message: report.message,
        iterations: solution.iterations,
        trust: trustLine(
          set.instrument.kind,
          rungs,
          rungs.some((r) => r.share === 1),
        ),
        warnings: [
          ...unlike.filter((o) => o.tube === set.tubes[t]!.id).map((o) => o.words),
          ...warningsFor(own, t),
        ],
      },
    };
  });
  return {
    palette,
    tubes,
    surfaceSds: films.surfaceSds,
    drawdowns: films.drawdowns,
    swatches: evidence.map((e) => e.fitted),
    noise: { sigma: problem.noise.sigma, relative: problem.noise.relative },
    weighing: set.weighing ?? ASSUMED_WEIGHING,
    ...(films.whiteScatteringPerMicrometre
      ? { whiteScatteringPerMicrometre: films.whiteScatteringPerMicrometre }
      : {}),
    status,
    message: report.message,
    iterations: solution.iterations,
    cost: report.cost,
    optimality: report.optimality,
    warnings: unlike.map((o) => o.words),
    leftOut: [],
  };
}

function warningsFor(own: readonly SwatchEvidence[], tube: number): string[] {
  return own.some((e) => e.shares[tube] === 1) ? [] : [say('no-masstone')];
}

/** Fits again without the rungs most likely wrong, one of a tube at a time; each is named in the warnings. */
function withoutRungs(set: SwatchSet, options: FitOptions, wrong: readonly LeftOutRung[]): PaletteFit {
  const worst = wrong.filter((w, i) => wrong.findIndex((v) => v.tube === w.tube) === i);
  const without = new Set([...(options.without ?? []), ...worst.flatMap((w) => w.swatches)]);
  const fit = fitPalette(set, { ...options, without });
  return {
    ...fit,
    warnings: [...worst.map((w) => w.words), ...fit.warnings],
    leftOut: [...worst, ...fit.leftOut],
    tubes: fit.tubes.map((tube) => {
      const own = worst.filter((w) => w.tube === tube.tube.id).map((w) => w.words);
      const warnings = [...own, ...tube.evidence.warnings];
      return own.length ? { ...tube, evidence: { ...tube.evidence, warnings } } : tube;
    }),
  };
}
