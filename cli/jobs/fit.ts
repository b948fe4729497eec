import { fitPalette } from '../../src/fit/fit-palette.ts';
import type { StatedThickness } from '../../src/fit/film-facts/tube-film.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { readProfile } from '../../src/profile/read.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { VERSION } from '../../server/version.ts';
import { readSet } from '../input.ts';
import { type Output, printJson, writeOut } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import type { FitOptions } from '../verbs/fit.ts';
import { fitReport } from './fit-report.ts';
import { fitTable } from './fit-table.ts';

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
  const report = fitReport(fit, set, {
    advice: options.advice,
    at: options.film === undefined ? undefined : thicknessOf(options.film),
    against: options.against,
    again: options.again === undefined ? undefined : readSet(options.again),
  });
  if (options.json) printJson(output, report);
  // With the profile on standard output the table would be in its way.
  else if (options.output === '-') output.err(fitTable(report));
  else output.out(fitTable(report));
}

/** "50um" or "50 µm" in micrometres; a plain number in units of the white's scattering. */
function thicknessOf(text: string): StatedThickness {
  const found = /^\s*(\d+(?:\.\d+)?)\s*(um|µm|μm)?\s*$/.exec(text);
  const value = Number(found?.[1]);
  if (!found || !(value > 0)) {
    throw new CommandProblem(
      `--film "${text}" is no thickness; give micrometres of wet film as 50um, or a number of the white's scattering as 2.`,
    );
  }
  return found[2] ? { micrometres: value } : { X: value };
}
