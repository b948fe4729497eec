/**
 * Why some real mixtures are foretold worst: the real oil paints fitted again with one assumption let go at a time.
 *
 *   node --import tsx bench/worst-mixtures.bench.ts
 */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { readSwatchSet } from '../src/calibrate/swatch-set/read.ts';
import type { SwatchSet } from '../src/calibrate/swatch-set/schema.ts';
import { fitPalette } from '../src/fit/fit-palette.ts';
import { SETTINGS, type FitSettings } from '../src/fit/model/settings.ts';
import { checkProfile } from '../src/mix/check/check-profile.ts';

const OIL = new URL('../tests/fixtures/paint/oil-ladders.json', import.meta.url);

interface Trial {
  readonly settings?: Partial<FitSettings>;
  readonly set?: (set: SwatchSet) => SwatchSet;
}

const without =
  (...drawdowns: readonly string[]) =>
  (set: SwatchSet): SwatchSet => ({
    ...set,
    swatches: set.swatches.filter(({ id }) => !drawdowns.some((d) => id.startsWith(`${d}-`))),
  });
const { s1st, s2nd } = SETTINGS.spectral;

const LET_GO: Readonly<Record<string, Trial>> = {
  nothing: {},
  'crowding of the white, sd 0.3': { settings: { crowdingSd: 0.3 } },
  'weighing error 20 % in place of 2 %': {
    set: (set) => ({ ...set, weighing: { ...set.weighing, relativeSigma: 0.2 } }),
  },
  'thickness spread 0.6 in place of 0.3': { settings: { thicknessSd: 0.6 } },
  'k2 held at theory': { settings: { k2Sd: 1e-4 } },
  'ln S twice as rough': { settings: { s1st: 2 * s1st, s2nd: 2 * s2nd } },
  'strongest two rungs of the black left out': { set: without('07E', '07F') },
  'tints of the green left out': { set: without('09B', '09C') },
  'tints of the blue left out': { set: without('11B', '11C') },
  'haze free from film to film, 0.016': { settings: { hazeSd: 0.016 } },
};

function row(name: string, set: SwatchSet): string {
  const { settings, set: changed } = LET_GO[name]!;
  const asked = changed ? changed(set) : set;
  const { palette } = fitPalette(asked, { leaveOneOut: false, ...(settings ? { settings } : {}) });
  const { checks } = checkProfile(palette, set);
  const of = (id: string): number => checks.find((c) => c.id === id)!.deltaE00;
  const overWhite = checks.filter((c) => c.id.endsWith('over-white'));
  const mean = overWhite.reduce((sum, c) => sum + c.deltaE00, 0) / overWhite.length;
  const figures = [mean, of('09E-over-white'), of('11D-over-white'), of('11D-over-black')];
  return [name.padEnd(42), ...figures.map((v) => v.toFixed(1).padStart(8))].join(' ');
}

/** The checks with another share of black than was weighed. */
function withBlackTimes(times: number, set: SwatchSet): SwatchSet {
  const checks = set.checks?.map((c) =>
    c.masses?.['bone-black']
      ? { ...c, masses: { ...c.masses, 'bone-black': times * c.masses['bone-black'] } }
      : c,
  );
  return { ...set, ...(checks ? { checks } : {}) };
}

/** How near the two worst come with any share of black from none to four times what was weighed. */
function nearest(set: SwatchSet): string {
  const { palette } = fitPalette(set, { leaveOneOut: false });
  const shares = Array.from({ length: 81 }, (_, i) => i / 20);
  const tried = shares.map((times) => checkProfile(palette, withBlackTimes(times, set)).checks);
  const least = (id: string): string =>
    Math.min(...tried.map((checks) => checks.find((c) => c.id === id)!.deltaE00))
      .toFixed(1)
      .padStart(8);
  const figures = ['09E-over-white', '11D-over-white', '11D-over-black'].map(least);
  return ['nearest with any share of black, 0 to 4 x'.padEnd(42), ' '.repeat(8), ...figures].join(' ');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const set = readSwatchSet(readFileSync(OIL, 'utf8'));
  const head = ['mean', '09E', '11D', '11D/k'].map((h) => h.padStart(8)).join(' ');
  console.log(`${'let go; CIEDE2000 over white (k: black)'.padEnd(42)} ${head}`);
  for (const name of Object.keys(LET_GO)) console.log(row(name, set));
  console.log(nearest(set));
}
