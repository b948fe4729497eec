/**
 * Writes src/colour/tables from the CIE tables in tests/fixtures/cie.
 *
 * Nine illuminants are taken as they stand from e308_weights_generated_E2022.csv. CIE LED-B3 has no row there and
 * is computed here by the method of ASTM E2022: R is interpolated to 1 nm by Lagrange cubics (quadratics in the
 * first and last interval), so that the weight of one wavelength is the sum of its Lagrange coefficients times
 * illuminant times colour-matching function. The same code run on D65 must reproduce the table (it stops if not).
 *
 *   node --import tsx scripts/make-colour-tables.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

const fixtures = new URL('../tests/fixtures/cie/', import.meta.url);
const rows = (file: string): Record<string, string>[] =>
  parse(readFileSync(new URL(file, fixtures)), { columns: true });

const TABLE_NM = Array.from({ length: 43 }, (_, i) => 360 + 10 * i);

function lagrange(nodes: number[], at: number): number[] {
  return nodes.map((xi, i) => nodes.reduce((p, xj, j) => (i === j ? p : (p * (at - xj)) / (xi - xj)), 1));
}

function e2022(spd: (nm: number) => number, cmf: Map<number, [number, number, number]>): number[][] {
  const w = TABLE_NM.map(() => [0, 0, 0]);
  let sumY = 0;
  for (let nm = 360; nm <= 780; nm++) {
    const seg = Math.min(Math.floor((nm - 360) / 10), TABLE_NM.length - 2);
    const lo = seg === 0 ? 0 : seg - 1;
    const hi = seg === TABLE_NM.length - 2 ? seg + 1 : seg + 2;
    const nodes = TABLE_NM.slice(lo, hi + 1);
    const c = lagrange(nodes, nm);
    const bar = cmf.get(nm)!;
    sumY += spd(nm) * bar[1];
    nodes.forEach((_, k) => bar.forEach((v, ch) => (w[lo + k]![ch]! += c[k]! * v * spd(nm))));
  }
  return w.map((r) => r.map((v) => (100 * v) / sumY));
}

const spds = rows('illuminants_5nm_380_780.csv');
function spdOf(name: string): (nm: number) => number {
  const table = new Map(spds.map((r) => [Number(r['wavelength_nm']), Number(r[name])]));
  return (nm) => {
    if (nm < 380 || nm > 780) return 0;
    const lo = Math.floor(nm / 5) * 5;
    const a = table.get(lo)!;
    return a + ((nm - lo) / 5) * ((table.get(lo + 5) ?? a) - a);
  };
}
function cmfOf(file: string): Map<number, [number, number, number]> {
  return new Map(
    rows(file).map((r) => [Number(r['wavelength_nm']), [Number(r['x']), Number(r['y']), Number(r['z'])]]),
  );
}
const cmfs = { '2deg': cmfOf('cie1931_2deg_1nm.csv'), '10deg': cmfOf('cie1964_10deg_1nm.csv') } as const;

const out: Record<string, { x: number[]; y: number[]; z: number[] }> = {};
for (const r of rows('e308_weights_generated_E2022.csv')) {
  if (r['step_nm'] !== '10') continue;
  const t = (out[`${r['illuminant']}/${r['observer_deg']}deg`] ??= { x: [], y: [], z: [] });
  t.x.push(Number(r['Wx']));
  t.y.push(Number(r['Wy']));
  t.z.push(Number(r['Wz']));
}
let worst = 0;
for (const observer of ['2deg', '10deg'] as const) {
  const trial = e2022(spdOf('D65'), cmfs[observer]);
  const known = out[`D65/${observer}`]!;
  TABLE_NM.forEach((nm, i) => {
    if (nm < 400) return; // the 5 nm table starts at 380 nm, so weights near its edge differ a little
    worst = Math.max(worst, Math.abs(trial[i]![1]! - known.y[i]!), Math.abs(trial[i]![2]! - known.z[i]!));
  });
  const led = e2022(spdOf('LED-B3'), cmfs[observer]);
  out[`LED-B3/${observer}`] = {
    x: led.map((v) => v[0]!),
    y: led.map((v) => v[1]!),
    z: led.map((v) => v[2]!),
  };
}
console.log(`largest departure from the known D65 weights: ${worst.toFixed(5)}`);
if (worst > 0.005) throw new Error('the E2022 code does not reproduce the D65 table');

// ASTM E308 prints three decimals; five keep the library small and X, Y, Z of a reflectance within 0.00002.
const row = (weights: readonly number[]): string => weights.map((v) => Number(v.toFixed(5))).join(', ');
const LAMPS = ['D65/10deg', 'D50/10deg', 'A/10deg', 'LED-B3/10deg', 'C/2deg'];
const write = (file: string, name: string, which: string, wanted: (white: string) => boolean): void => {
  const lines = Object.entries(out)
    .filter(([white]) => wanted(white))
    .map(
      ([white, t]) =>
        `  '${white}': {\n    x: [${row(t.x)}],\n    y: [${row(t.y)}],\n    z: [${row(t.z)}],\n  },`,
    );
  writeFileSync(
    new URL(`../src/colour/tables/${file}`, import.meta.url),
    `/**
 * Tristimulus weights, 360-780 nm in 10 nm steps (43 numbers a row), no bandpass correction; Y of the perfect
 * diffuser is 100; five decimals. ${which} Written by scripts/make-colour-tables.ts: do not edit.
 * Source: ASTM E2022's method on the CIE tables of ISO/CIE 11664-1 and -2, as carried by colour-science/colour
 * 0.4.6 (BSD-3-Clause, see THIRD_PARTY.md); CIE LED-B3 of CIE 15:2018 computed by the same method.
 */
export const ${name} = {
${lines.join('\n')}
} as const satisfies Record<string, { x: readonly number[]; y: readonly number[]; z: readonly number[] }>;
`,
  );
};
write('weights-lamps-10nm.ts', 'LAMP_WEIGHTS', 'The whites a page draws in.', (w) => LAMPS.includes(w));
write(
  'weights-others-10nm.ts',
  'OTHER_WEIGHTS',
  'All whites but those a page draws in.',
  (w) => !LAMPS.includes(w),
);

// The perfect diffuser by those weights, for those who need whites and no weights: pages that show a Lab.
const { tristimulusWeights } = await import('../src/colour/tristimulus.ts');
const { xyzOf } = await import('../src/colour/xyz.ts');
const { ILLUMINANTS, OBSERVERS } = await import('../src/colour/illuminant.ts');
const whites = ILLUMINANTS.flatMap((i) => OBSERVERS.map((o) => `${i}/${o}` as const)).map((name) => {
  const weights = tristimulusWeights(name);
  const { X, Y, Z } = xyzOf(new Float64Array(weights.x.length).fill(1), weights);
  return `  '${name}': [${X}, ${Y}, ${Z}],`;
});
writeFileSync(
  new URL('../src/colour/tables/white-points.ts', import.meta.url),
  `/**
 * X, Y, Z of the perfect diffuser: the sums of the weights, to the last bit.
 * Written by scripts/make-colour-tables.ts: do not edit.
 */
export const WHITE_POINTS = {
${whites.join('\n')}
} as const satisfies Record<string, readonly [number, number, number]>;
`,
);
