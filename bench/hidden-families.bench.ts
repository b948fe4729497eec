/**
 * How well the fit foretells paints it was not made on, and whether its regions are true: invented paints with fresh seeds,
 * read through radiative transfer, mixtures between tubes with and without white.
 *
 *   node --import tsx bench/hidden-families.bench.ts [seed,seed,... or first-last] [kind,...] [family,...]
 *
 * whole: palettes of which every mixture lies inside its region; the mixtures of one palette err together.
 */
import { pathToFileURL } from 'node:url';
import { fitPalette } from '../src/fit/fit-palette.ts';
import { checkProfile } from '../src/mix/check/check-profile.ts';
import { type InventedOptions, inventedSet } from '../tests/fit/invented-set.ts';

const FAMILIES: Readonly<Record<string, InventedOptions>> = {
  smooth: {},
  'sharp bands': { sharp: true },
  'crowding 0.15': { crowding: 0.15 },
  'index 1.4': { index: 1.4 },
  'index 1.6': { index: 1.6 },
  'all of these': { sharp: true, crowding: 0.15, index: 1.45 },
};
type Kind = NonNullable<InventedOptions['kind']>;

function row(kind: Kind, family: string, seeds: readonly number[]): string {
  const palettes = seeds.map((seed) => {
    const set = inventedSet(seed, { ...FAMILIES[family]!, kind });
    return checkProfile(fitPalette(set, { leaveOneOut: false }).palette, set).checks;
  });
  const whole = palettes.filter((p) => p.every((c) => c.inside95)).length;
  const checks = palettes.flat();
  const sorted = (of: (c: (typeof checks)[number]) => number): number[] =>
    checks.map(of).toSorted((a, b) => a - b);
  const differences = sorted((c) => c.deltaE00);
  const mean = differences.reduce((a, v) => a + v, 0) / checks.length;
  const inside = checks.filter((c) => c.inside95).length / checks.length;
  const figures = [
    mean.toFixed(2),
    differences[Math.ceil(0.9 * checks.length) - 1]!.toFixed(2),
    `${(100 * inside).toFixed(1)} %`,
    sorted((c) => c.region)[Math.floor(checks.length / 2)]!.toFixed(2),
    `${whole}/${seeds.length}`,
  ];
  return [kind.padEnd(12), family.padEnd(14), ...figures.map((f) => f.padStart(8))].join(' ');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const seeds = seedsOf(process.argv[2] || '501-504');
  const kinds = listed(process.argv[3], ['spectral', 'bands', 'tristimulus']) as Kind[];
  const families = listed(process.argv[4], Object.keys(FAMILIES));
  console.log('kind         paints             mean      p90   inside   region    whole');
  for (const kind of kinds) for (const family of families) console.log(row(kind, family, seeds));
}

/** "501,507" or "501-504". */
function seedsOf(text: string): number[] {
  if (/^\d{1,6}(-\d{1,6})?(,\d{1,6}(-\d{1,6})?)*$/.test(text)) {
    const seeds = text.split(',').flatMap((part) => {
      const [first, last = first] = part.split('-').map(Number) as [number, number?];
      return Array.from({ length: Math.max(0, last! - first + 1) }, (_, i) => first + i);
    });
    if (seeds.length > 0) return seeds;
  }
  return refuse(`"${text}" names no seeds; give whole numbers as 501,507 or 501-504.`);
}

function listed(text: string | undefined, known: readonly string[]): string[] {
  if (!text) return [...known];
  const asked = text.split(',');
  const unknown = asked.find((name) => !known.includes(name));
  return unknown === undefined
    ? asked
    : refuse(`"${unknown}" is not known; give some of ${known.join(', ')}.`);
}

function refuse(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}
