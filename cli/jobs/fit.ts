import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { nextMeasurements } from '../../src/fit/advice/next-measurements.ts';
import type { PaletteFit, TubeFit } from '../../src/fit/palette-fit.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { readProfile } from '../../src/profile/read.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { VERSION } from '../../server/version.ts';
import { readSet } from '../input.ts';
import { type Output, printJson, table, writeOut } from '../output.ts';
import type { FitOptions } from '../verbs/fit.ts';

export function runFit(file: string, options: FitOptions, output: Output): void {
  const set = readSet(file);
  const fit = fitPalette(set);
  if (options.output !== undefined) {
    const profile = profileFromFit(fit, {
      ...(set.title ? { title: set.title } : {}),
      created: new Date().toISOString(),
      generator: { name: 'tintladder', version: VERSION },
      provenance: {
        readings: set.swatches.reduce((n, s) => n + s.readings.length, 0),
        swatches: set.swatches.length,
        ...(set.source ? { source: set.source } : {}),
      },
    });
    const text = writeProfile(profile);
    // What is handed on must be what can be read again.
    readProfile(text);
    writeOut(options.output, text, output);
  }
  if (options.json) printJson(output, reportOf(fit, set, options));
  // With the profile on standard output the table would be in its way.
  else if (options.output === '-') output.err(fitTable(fit, set, options));
  else output.out(fitTable(fit, set, options));
}

interface TubeReport {
  id: string;
  label: string;
  readings: string;
  rungs: number;
  residual: number | null;
  leftOut: number | null;
  mcdm: number | null;
  weighingErrorPercent: number;
  status: string;
  trust: string;
  warnings: readonly string[];
  /** What to measure next, best first, with the mean fall of the 95 % radius it buys; where it was asked for. */
  next?: readonly { sentence: string; gain: number }[];
}

function reportOf(
  fit: PaletteFit,
  set: SwatchSet,
  options: FitOptions,
): {
  tubes: TubeReport[];
  status: string;
  message: string;
  iterations: number;
  warnings: readonly string[];
} {
  return {
    tubes: fit.tubes.map((tube) => tubeReport(tube, fit, set, options)),
    status: fit.status,
    message: fit.message,
    iterations: fit.iterations,
    warnings: fit.warnings,
  };
}

function tubeReport(
  { tube, evidence }: TubeFit,
  fit: PaletteFit,
  set: SwatchSet,
  options: FitOptions,
): TubeReport {
  const { rungs } = evidence;
  return {
    id: tube.id,
    label: tube.label ?? tube.id,
    readings: evidence.readings,
    rungs: rungs.length,
    residual: meanOf(rungs.map((r) => r.deltaE00)),
    leftOut: meanOf(rungs.flatMap((r) => r.leftOutDeltaE00 ?? [])),
    mcdm: meanOf(rungs.flatMap((r) => r.mcdm ?? [])),
    weighingErrorPercent: 100 * Math.max(0, ...rungs.map((r) => Math.abs(Math.expm1(r.lnRatioError)))),
    status: evidence.status,
    trust: evidence.trust,
    warnings: evidence.warnings,
    ...(options.advice
      ? { next: nextMeasurements(fit, set, tube.id, 3).map(({ sentence, gain }) => ({ sentence, gain })) }
      : {}),
  };
}

function meanOf(values: readonly number[]): number | null {
  return values.length > 0 ? values.reduce((sum, v) => sum + v, 0) / values.length : null;
}

function fitTable(fit: PaletteFit, set: SwatchSet, options: FitOptions): string {
  const number = (v: number | null): string => (v === null ? '-' : v.toFixed(2));
  const { tubes, status, message, warnings } = reportOf(fit, set, options);
  const rows = tubes.map((t) => [
    t.id,
    String(t.rungs),
    number(t.residual),
    number(t.leftOut),
    number(t.mcdm),
    `${t.weighingErrorPercent.toFixed(1)} %`,
    t.trust,
  ]);
  const said = [...warnings, ...tubes.flatMap((t) => t.warnings.map((w) => `${t.id}: ${w}`))];
  return [
    table(['tube', 'rungs', 'residual', 'left out', 'MCDM', 'weighing', 'trust'], rows),
    '',
    `${status === 'converged' ? 'Converged' : 'Stopped'} after ${fit.iterations} steps: ${message}`,
    ...said.map((sentence) => `Warning: ${sentence}`),
    ...nextLines(tubes),
  ].join('\n');
}

/** The measurements that buy most over all tubes; the whole list is in the JSON. */
function nextLines(tubes: readonly TubeReport[]): string[] {
  const most = tubes
    .flatMap((t) => t.next?.slice(0, 1) ?? [])
    .toSorted((a, b) => b.gain - a.gain)
    .slice(0, 3);
  return most.length > 0 ? ['', 'To measure next:', ...most.map((n) => `  ${n.sentence}`)] : [];
}
