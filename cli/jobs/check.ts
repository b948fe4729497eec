import { checkProfile, type CheckReport } from '../../src/mix/check/check-profile.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfileFile, readSet, whiteOf } from '../input.ts';
import { type Output, printJson, table } from '../output.ts';
import type { CheckOptions } from '../verbs/check.ts';

export function runCheck(profileFile: string, setFile: string, options: CheckOptions, output: Output): void {
  const profile = readProfileFile(profileFile);
  const report = checkProfile(paletteOf(profile), readSet(setFile), { white: whiteOf(options) });
  if (!options.json) return output.out(checkTable(report));
  // The members are a promise to other programs: no more and no fewer.
  const checks = report.checks.map(({ id, reflectance, deltaE00, inside95 }) => ({
    id,
    reflectance,
    deltaE00,
    inside95,
  }));
  return printJson(output, { wavelengths: report.wavelengths, checks, summary: report.summary });
}

function checkTable({ checks, summary }: CheckReport): string {
  const rows = checks.map((c) => [
    c.id,
    c.deltaE00.toFixed(2),
    c.region.toFixed(2),
    c.inside95 ? 'yes' : 'no',
  ]);
  return [
    table(['check', 'CIEDE2000', 'foretold', 'inside 95 %'], rows),
    '',
    `${summary.count} checks: mean ${summary.meanDeltaE00.toFixed(2)}, median ${summary.medianDeltaE00.toFixed(2)}, ` +
      `90 % under ${summary.p90DeltaE00.toFixed(2)}, worst ${summary.maxDeltaE00.toFixed(2)} CIEDE2000; ` +
      `${(100 * summary.inside95Share).toFixed(0)} % inside their 95 % region.`,
  ].join('\n');
}
