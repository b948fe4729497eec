/**
 * How well the fit foretells paints it was not made on, and whether its regions are true: invented paints with fresh seeds,
 * read through radiative transfer, mixtures between tubes with and without white.
 *
 *   node --import tsx bench/hidden-families.bench.ts [seed,seed,...] [kind,kind,...]
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
  const checks = seeds.flatMap((seed) => {
    const set = inventedSet(seed, { ...FAMILIES[family]!, kind });
    return checkProfile(fitPalette(set, { leaveOneOut: false }).palette, set).checks;
  });
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
  ];
  return [kind.padEnd(12), family.padEnd(14), ...figures.map((f) => f.padStart(8))].join(' ');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const seeds = (process.argv[2] ?? '501,502,503,504').split(',').map(Number);
  const kinds = (process.argv[3] ?? 'spectral,bands,tristimulus').split(',') as Kind[];
  console.log('kind         paints             mean      p90   inside   region');
  for (const kind of kinds) {
    for (const family of Object.keys(FAMILIES)) console.log(row(kind, family, seeds));
  }
}
