import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { nextMeasurements } from '../../src/fit/advice/next-measurements.ts';
import { frameWords } from '../../src/fit/frame-words.ts';
import { type DoubtSources, doubtSources } from '../../src/fit/evidence/doubt-sources.ts';
import { type DryingShift, dryingShift, dryingShiftsIn } from '../../src/fit/drying-shift.ts';
import { type StatedThickness, type TubeFilm, tubeFilm } from '../../src/fit/film-facts/tube-film.ts';
import type { LeftOutRung, PaletteFit, TubeFit } from '../../src/fit/palette-fit.ts';
import { type HalfStrength, halfStrength, strengthPercent } from '../../src/fit/strength.ts';
import { type CheckedMixture, checkProfile } from '../../src/mix/check/check-profile.ts';

export interface ReportOptions {
  readonly advice?: boolean | undefined;
  /** Thickness for the contrast ratios. */
  readonly at?: StatedThickness | undefined;
  /** The tube whose tinting strength counts as 100 %. */
  readonly against?: string | undefined;
  /** The same swatches read again. */
  readonly again?: SwatchSet | undefined;
}

export interface TubeReport {
  readonly id: string;
  readonly label: string;
  readonly readings: string;
  readonly rungs: number;
  /** Mean CIEDE2000 of the rungs, and of the rungs foretold by the others. */
  readonly residual: number | null;
  readonly leftOut: number | null;
  /** Checks of the document that hold this tube; null where there are none. */
  readonly checks: {
    readonly count: number;
    readonly mean: number;
    readonly worst: number;
    readonly inside95: number;
  } | null;
  /** Mean colour difference of repeats from their mean (ASTM E2214), CIEDE2000. */
  readonly mcdm: number | null;
  /** Largest weighing error that the readings call for, of the rungs that were fitted. */
  readonly weighingErrorPercent: number;
  /** Rungs that were not believed and left out. */
  readonly notBelieved: readonly LeftOutRung[];
  readonly doubt: DoubtSources;
  readonly status: string;
  readonly trust: string;
  readonly warnings: readonly string[];
  readonly film: TubeFilm;
  /** Parts of white that take half the depth; null for the white and for what is as light. */
  readonly halfStrength: HalfStrength | null;
  /** Per cent of the other tube's; absent where none was asked for. */
  readonly strengthPercent?: { readonly value: number; readonly low: number; readonly high: number };
  readonly drying: readonly DryingShift[];
  /** What to measure next, best first, with the mean fall of the 95 % radius it buys; where it was asked for. */
  readonly next?: readonly { readonly sentence: string; readonly gain: number }[];
}

export interface FitReport {
  readonly tubes: readonly TubeReport[];
  readonly status: string;
  readonly message: string;
  readonly iterations: number;
  readonly warnings: readonly string[];
  /** What was found of surface and white from all tubes together; null where it was assumed. */
  readonly frame: string | null;
}

/** Everything `fit` says of a palette. @throws RangeError for a film or a tube that cannot be told of */
export function fitReport(fit: PaletteFit, set: SwatchSet, options: ReportOptions): FitReport {
  const checked =
    set.checks.length > 0 && set.instrument.geometry === fit.palette.geometry
      ? checkProfile(fit.palette, set).checks
      : [];
  const drying = [...dryingShiftsIn(set), ...(options.again ? dryingShift(set, options.again) : [])];
  return {
    tubes: fit.tubes.map((tube) => tubeReport(tube, fit, set, checked, drying, options)),
    status: fit.status,
    message: fit.message,
    iterations: fit.iterations,
    warnings: fit.warnings,
    frame: frameWords(fit.palette, fit.surfaceSds) ?? null,
  };
}

function tubeReport(
  { tube, evidence }: TubeFit,
  fit: PaletteFit,
  set: SwatchSet,
  checked: readonly CheckedMixture[],
  drying: readonly DryingShift[],
  options: ReportOptions,
): TubeReport {
  const { palette } = fit;
  const { rungs } = evidence;
  const white = set.tubes.find((t) => t.id === palette.white)!;
  const coloured = tube.id !== palette.white;
  const { against } = options;
  return {
    id: tube.id,
    label: tube.label ?? tube.id,
    readings: evidence.readings,
    rungs: rungs.length,
    residual: meanOf(rungs.map((r) => r.deltaE00)),
    leftOut: meanOf(rungs.flatMap((r) => r.leftOutDeltaE00 ?? [])),
    checks: checksWith(tube.id, set, checked),
    mcdm: meanOf(rungs.flatMap((r) => r.mcdm ?? [])),
    weighingErrorPercent: 100 * Math.max(0, ...rungs.map((r) => Math.abs(Math.expm1(r.lnRatioError)))),
    notBelieved: fit.leftOut.filter((rung) => rung.tube === tube.id),
    doubt: doubtSources(palette, tube.id),
    status: evidence.status,
    trust: evidence.trust,
    warnings: evidence.warnings,
    film: tubeFilm(palette, tube, white, {
      at: options.at,
      perMicrometre: fit.whiteScatteringPerMicrometre,
    }),
    halfStrength: coloured ? halfStrengthOf(fit, tube.id) : null,
    ...(against !== undefined && coloured
      ? { strengthPercent: strengthPercent(palette, against, tube.id) }
      : {}),
    drying: drying.filter(({ id }) => rungs.some((r) => r.id === id)),
    ...(options.advice
      ? { next: nextMeasurements(fit, set, tube.id, 3).map(({ sentence, gain }) => ({ sentence, gain })) }
      : {}),
  };
}

/** A check holds a tube when its own masses, or what it was made from, name it. */
function checksWith(id: string, set: SwatchSet, checked: readonly CheckedMixture[]): TubeReport['checks'] {
  const holding = new Set(
    set.checks
      .filter((c) => (c.masses?.[id] ?? 0) > 0 || c.made?.some((p) => 'tube' in p && p.tube === id))
      .map((c) => c.id),
  );
  const own = checked.filter((c) => holding.has(c.id));
  if (own.length === 0) return null;
  const differences = own.map((c) => c.deltaE00);
  return {
    count: own.length,
    mean: meanOf(differences)!,
    worst: Math.max(...differences),
    inside95: own.filter((c) => c.inside95).length / own.length,
  };
}

/** Null where a paint is as light as the white: there is no middle. */
function halfStrengthOf({ palette }: PaletteFit, id: string): HalfStrength | null {
  try {
    return halfStrength(palette, id);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function meanOf(values: readonly number[]): number | null {
  return values.length > 0 ? values.reduce((sum, v) => sum + v, 0) / values.length : null;
}
