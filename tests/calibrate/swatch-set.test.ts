import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ladderRatios, lnRatiosOf } from '../../src/calibrate/ladder/ratios.ts';
import { pilesOf, sharesOfPile, weighingErrorOfResolution } from '../../src/calibrate/swatch-set/piles.ts';
import { SwatchSetProblem } from '../../src/calibrate/swatch-set/problem.ts';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { SAME_ARITHMETIC } from '../tolerances.ts';

/** A small ladder in three bands; each test spoils one thing. */
function ladder(): Record<string, unknown> & {
  swatches: Record<string, unknown>[];
  tubes: Record<string, unknown>[];
  checks: Record<string, unknown>[];
} {
  return {
    format: 'swatch-set',
    version: 1,
    instrument: { geometry: '45/0', kind: 'spectral', wavelengths: [450, 550, 650] },
    weighing: { resolution: 0.01 },
    tubes: [{ id: 'white', role: 'white' }, { id: 'blue' }],
    backings: [{ id: 'card', reflectance: [0.8, 0.8, 0.8] }],
    swatches: [
      { id: 'white-masstone', masses: { white: 2 }, readings: [[0.85, 0.86, 0.86]] },
      { id: 'blue-masstone', masses: { blue: 2 }, readings: [[0.05, 0.01, 0.01]] },
      { id: 'blue-1:4', masses: { blue: 0.4, white: 1.6 }, readings: [[0.5, 0.2, 0.1]] },
      {
        id: 'blue-1:16',
        made: [
          { from: 'blue-1:4', grams: 0.5 },
          { tube: 'white', grams: 1.2 },
        ],
        readings: [[0.6, 0.4, 0.3]],
      },
    ],
    checks: [],
  };
}

const refused = (document: unknown): string => {
  try {
    readSwatchSet(document);
  } catch (error) {
    expect(error).toBeInstanceOf(SwatchSetProblem);
    return (error as Error).message;
  }
  throw new Error('was read');
};

describe('readSwatchSet refuses in one sentence', () => {
  it.each([
    ['nothing', null, /JSON object/],
    ['a broken text', '{"format":', /not JSON/],
    ['another document', { format: 'palette-profile', version: 1 }, /"swatch-set"/],
    ['another version', { ...ladder(), version: 2 }, /version 2.*reads version 1/],
  ])('%s', (_, document, sentence) => expect(refused(document)).toMatch(sentence));

  const spoilt: [string, (set: ReturnType<typeof ladder>) => void, RegExp][] = [
    ['two swatches of one id', (s) => (s.swatches[1]!['id'] = 'white-masstone'), /"white-masstone"/],
    ['an unknown tube', (s) => (s.swatches[2]!['masses'] = { bleu: 1 }), /"bleu".*white, blue/],
    ['an unknown backing', (s) => (s.swatches[2]!['backing'] = 'wall'), /"wall"/],
    [
      'a finite film on nothing',
      (s) => (s.swatches[2]!['film'] = { thickness: null, drawdown: 'a' }),
      /card/,
    ],
    ['a short reading', (s) => (s.swatches[2]!['readings'] = [[0.1, 0.2]]), /"blue-1:4".*2 numbers.*3/],
    ['a reading that is no number', (s) => (s.swatches[2]!['readings'] = [[0.1, NaN, 0.2]]), /"blue-1:4"/],
    ['per cent', (s) => (s.swatches[0]!['readings'] = [[85, 86, 86]]), /divide by 100/],
    ['a negative mass', (s) => (s.swatches[2]!['masses'] = { blue: -1, white: 2 }), /"blue-1:4"/],
    ['no paint', (s) => (s.swatches[2]!['masses'] = { blue: 0, white: 0 }), /no paint/],
    ['masses and made', (s) => (s.swatches[3]!['masses'] = { blue: 1 }), /both masses and made/],
    ['an unknown source', (s) => (s.swatches[3]!['made'] = [{ from: 'x', grams: 1 }]), /"x"/],
    ['a circle', (s) => (s.swatches[3]!['made'] = [{ from: 'blue-1:16', grams: 1 }]), /from itself/],
    ['no white', (s) => delete s.tubes[0]!['role'], /role of white/],
    ['two whites', (s) => (s.tubes[1]!['role'] = 'white'), /"white" and "blue"/],
    ['tints without a masstone', (s) => s.swatches.splice(1, 1), /"blue" has no masstone/],
    ['no white masstone', (s) => s.swatches.splice(0, 1), /"white" has no masstone/],
    ['an empty check', (s) => s.checks.push({ id: 'c', masses: { blue: 1 } }), /neither readings nor truth/],
  ];
  it.each(spoilt)('%s', (_, spoil, sentence) => {
    const set = ladder();
    spoil(set);
    expect(refused(set)).toMatch(sentence);
  });

  it('a response whose rows do not sum to 1', () => {
    const set = ladder();
    set['instrument'] = {
      geometry: '45/0',
      kind: 'bands',
      bands: [{ centre: 500, fwhm: 30 }],
      response: { wavelengths: [490, 500], rows: [[0.5, 0.6]] },
    };
    expect(refused(set)).toMatch(/sums to 1\.1/);
  });

  it('one drawdown of two mixtures', () => {
    const set = ladder();
    const film = { thickness: null, drawdown: 'a' };
    Object.assign(set.swatches[1]!, { film, backing: 'card' });
    Object.assign(set.swatches[2]!, { film, backing: 'card' });
    expect(refused(set)).toMatch(/one drawdown is one film/);
  });
});

describe('readSwatchSet takes', () => {
  it.each(['oil-ladders', 'transport-spectral', 'transport-bands', 'transport-xyz'])(
    '%s as it stands',
    (name) => {
      const set = readSwatchSet(
        readFileSync(new URL(`../fixtures/paint/${name}.json`, import.meta.url), 'utf8'),
      );
      expect(set.swatches.length).toBeGreaterThan(20);
    },
  );

  it('a document of checks alone', () => {
    const set = ladder();
    set.swatches = [];
    set.checks = [{ id: 'mix', masses: { blue: 1, white: 1 }, truth: [0.3, 0.2, 0.1] }];
    delete set.tubes[0]!['role'];
    expect(readSwatchSet(set).checks).toHaveLength(1);
  });
});

describe('weighing', () => {
  it('gives the ratio errors of a 0.01 g scale with 2 g in all (three decimals of the scale’s own arithmetic)', () => {
    // 0.6 %, 1.0 %, 3.5 % for 1:1, 1:4, 1:16: two rounded readings a part, d/sqrt(6) each.
    const ratio = (a: number, b: number): number =>
      Math.hypot(weighingErrorOfResolution(0.01) / a, weighingErrorOfResolution(0.01) / b);
    expect([ratio(1, 1), ratio(0.4, 1.6), ratio(2 / 17, 32 / 17)].map((v) => Math.round(v * 1000))).toEqual([
      6, 11, 35,
    ]);
  });

  it('carries the error of a rung into the rung diluted from it', () => {
    const { tubes, swatches, weighing } = readSwatchSet(ladder());
    const white = tubes.find((t) => t.role === 'white')!.id;
    const tints = swatches.filter(({ id }) => ['blue-1:4', 'blue-1:16'].includes(id));
    const { ids, covariance: C } = lnRatiosOf(ladderRatios(tints, weighing), 'blue', white);
    expect(ids).toEqual(['blue-1:4', 'blue-1:16']);
    expect(C[0]![1]).toBeGreaterThan(0);
    expect(C[1]![1]).toBeGreaterThan(C[0]![1]!);
    expect(C[0]![1]! / Math.sqrt(C[0]![0]! * C[1]![1]!)).toBeGreaterThan(0.5);
  });

  it('has slopes that agree with differences', () => {
    const piles = pilesOf(readSwatchSet(ladder()));
    const index = piles.piles.length - 1;
    const e = new Float64Array(piles.errorCount).fill(0.3);
    const at = sharesOfPile(piles, index, e);
    piles.piles[index]!.errors.forEach((error, k) => {
      const h = 1e-6;
      const up = Float64Array.from(e, (v, i) => (i === error ? v + h : v));
      const down = Float64Array.from(e, (v, i) => (i === error ? v - h : v));
      const slope =
        (sharesOfPile(piles, index, up).shares[1]! - sharesOfPile(piles, index, down).shares[1]!) / (2 * h);
      expect(Math.abs(slope - at.slopes[k]![1]!)).toBeLessThan(SAME_ARITHMETIC * 100);
    });
    expect(Math.abs(at.shares[0]! + at.shares[1]! - 1)).toBeLessThan(SAME_ARITHMETIC);
  });
});
