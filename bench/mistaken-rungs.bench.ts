/**
 * How often a mistake on the bench is found, and how often one is named where there is none: invented palettes of four
 * colours, read through radiative transfer, with one mistake each on a rung that changes from seed to seed.
 *
 *   node --import tsx bench/mistaken-rungs.bench.ts [seeds, default 12] [kind, default spectral]
 *
 * right: the rung and what happened to it are named. named: the rung is left out, whatever is said of it. warned: a warning
 * names it, and it stays. other: another rung is left out.
 */
import { pathToFileURL } from 'node:url';
import type { Swatch, SwatchSet } from '../src/calibrate/swatch-set/schema.ts';
import { fitPalette } from '../src/fit/fit-palette.ts';
import { type InventedOptions, inventedSet } from '../tests/fit/invented-set.ts';

type Kind = NonNullable<InventedOptions['kind']>;

interface Trial {
  readonly set: SwatchSet;
  readonly guilty: readonly string[];
  /** What the sentence about it must say. */
  readonly says?: RegExp;
}

const RUNGS = ['masstone', '1:1', '1:4', '1:16'] as const;
const rungOf = (seed: number, among: readonly string[]): string =>
  `paint-${1 + (seed % 4)}-${among[Math.floor(seed / 4) % among.length]!}`;

/** The masses of a swatch as a scale of this resolution shows them, on a pile of about 10 g. */
function weighedOn(resolution: number, swatch: Swatch): Swatch {
  const masses = Object.entries(swatch.masses ?? {});
  const total = masses.reduce((sum, [, m]) => sum + m, 0);
  const shown = (m: number): number => Math.round((10 * m) / total / resolution) * resolution;
  return { ...swatch, masses: Object.fromEntries(masses.map(([id, m]) => [id, shown(m)])) };
}

function onScale(set: SwatchSet, resolution: number): SwatchSet {
  return {
    ...set,
    weighing: { resolution },
    swatches: set.swatches.map((s) => weighedOn(resolution, s)),
  };
}

function turned(set: SwatchSet, id: string): SwatchSet {
  const swatches = set.swatches.map((s) => {
    if (s.id !== id) return s;
    const [[a, x], [b, y]] = Object.entries(s.masses!) as [[string, number], [string, number]];
    return { ...s, masses: { [a]: y, [b]: x } };
  });
  return { ...set, swatches };
}

/** Two neighbouring rungs, each with the other's readings. */
function exchanged(set: SwatchSet, seed: number): Trial {
  const first = seed % 3;
  const pair = [RUNGS[first]!, RUNGS[first + 1]!].map((r) => `paint-${1 + (seed % 4)}-${r}`);
  const [a, b] = pair.map((id) => set.swatches.find((s) => s.id === id)!.readings);
  const swatches = set.swatches.map((s) =>
    s.id === pair[0] ? { ...s, readings: b! } : s.id === pair[1] ? { ...s, readings: a! } : s,
  );
  return { set: { ...set, swatches }, guilty: pair, says: /changed places/ };
}

const spoilt = (seed: number, kind: Kind, id: string, by: (v: number) => number): SwatchSet =>
  inventedSet(seed, { kind, spoil: (at, reading) => (at === id ? reading.map(by) : reading) });

const KINDS: readonly Kind[] = ['spectral', 'bands', 'tristimulus'];

const MISTAKES: Readonly<Record<string, (seed: number, kind: Kind) => Trial>> = {
  none: (seed, kind) => ({ set: inventedSet(seed, { kind }), guilty: [] }),
  'none, 0.1 g scale': (seed, kind) => ({
    set: onScale(inventedSet(seed, { kind, weighing: 0.003 }), 0.1),
    guilty: [],
  }),
  'masses the wrong way round': (seed, kind) => {
    const id = rungOf(seed, ['1:4', '1:16']);
    return { set: turned(inventedSet(seed, { kind }), id), guilty: [id], says: /wrong way round/ };
  },
  'the same, 0.1 g scale': (seed, kind) => {
    const id = rungOf(seed, ['1:4', '1:16']);
    const set = onScale(inventedSet(seed, { kind, weighing: 0.003 }), 0.1);
    return { set: turned(set, id), guilty: [id], says: /wrong way round/ };
  },
  'ratio half as strong': (seed, kind) => {
    const id = rungOf(seed, RUNGS.slice(1));
    return { set: inventedSet(seed, { kind, wrong: { [id]: 0.5 } }), guilty: [id], says: /reads like 1:/ };
  },
  'ratio off by 20 %': (seed, kind) => {
    const id = rungOf(seed, RUNGS.slice(1));
    return { set: inventedSet(seed, { kind, wrong: { [id]: 1.2 } }), guilty: [id], says: /reads like 1:/ };
  },
  'two swatches exchanged': (seed, kind) => exchanged(inventedSet(seed, { kind }), seed),
  'exchanged, 0.1 g scale': (seed, kind) =>
    exchanged(onScale(inventedSet(seed, { kind, weighing: 0.003 }), 0.1), seed),
  'fingerprint, a veil of 3 %': (seed, kind) => {
    const id = rungOf(seed, RUNGS);
    return { set: spoilt(seed, kind, id, (v) => 0.97 * v + 0.03), guilty: [id], says: /even veil/ };
  },
  'wet rung, 3 % darker throughout': (seed, kind) => {
    const id = rungOf(seed, RUNGS.slice(1));
    return { set: spoilt(seed, kind, id, (v) => v - 0.03), guilty: [id], says: /darker by an even/ };
  },
};

export function row(name: string, seeds: readonly number[], kind: Kind): string {
  const count = { right: 0, named: 0, warned: 0, other: 0 };
  for (const seed of seeds) {
    const { set, guilty, says } = MISTAKES[name]!(seed, kind);
    const { leftOut, warnings } = fitPalette(set, { leaveOneOut: false });
    const found = leftOut.filter((l) => l.swatches.some((id) => guilty.includes(id)));
    if (found.length > 0) count.named++;
    if (says && found.some((l) => says.test(l.words))) count.right++;
    if (found.length === 0 && guilty.some((id) => warnings.some((w) => w.includes(`"${id}"`))))
      count.warned++;
    if (leftOut.length > found.length) count.other++;
  }
  const shares = Object.values(count).map((n) => `${n}/${seeds.length}`.padStart(7));
  return [name.padEnd(32), ...shares].join(' ');
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const seeds = Array.from({ length: Number(process.argv[2] ?? 12) }, (_, i) => 801 + i);
  const kind = (process.argv[3] ?? 'spectral') as Kind;
  if (!KINDS.includes(kind)) {
    console.error(`"${kind}" is no kind of reading; give one of ${KINDS.join(', ')}.`);
    process.exit(1);
  }
  console.log(`${`${kind}, one mistake a palette`.padEnd(32)}   right   named  warned   other`);
  for (const name of Object.keys(MISTAKES)) console.log(row(name, seeds, kind));
}
