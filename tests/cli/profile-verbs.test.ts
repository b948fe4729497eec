import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { readProfile } from '../../src/profile/read.ts';
import { cli, FIXTURES, type Ran, spawned } from './run-cli.ts';

/*
 * The fixture transport-spectral.json holds invented paints whose reflectance was made by radiative transfer, with the
 * noise-free truth of 120 mixtures: an outside check of what the commands say.
 */
const folder = mkdtempSync(join(tmpdir(), 'tintladder-cli-'));
const SET = join(FIXTURES, 'transport-spectral.json');
const PROFILE = join(folder, 'palette.json');
let fitted: Ran;
beforeAll(async () => {
  fitted = spawned('fit', SET, '-o', PROFILE);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Bounds {
  readonly low: number;
  readonly high: number;
}
interface FittedTube {
  readonly id: string;
  readonly rungs: number;
  readonly checks: { readonly count: number } | null;
  readonly doubt: { readonly shares: Record<string, number>; readonly dominant: string };
  readonly film: {
    readonly contrast: Bounds & {
      readonly value: number;
      readonly micrometres: number | null;
      readonly scope: { readonly iso6504: boolean };
    };
    readonly fullHiding: Bounds & {
      readonly X: number;
      readonly micrometres: (Bounds & { readonly value: number }) | null;
    };
    readonly scattering: { readonly value: number[]; readonly low: number[] } | null;
  };
  readonly halfStrength: (Bounds & { readonly parts: number }) | null;
  readonly strengthPercent?: Bounds;
  readonly drying: readonly { readonly beyondNoise: boolean; readonly dryDays: number | null }[];
}

describe('fit', () => {
  it('writes a profile that reads, and a table with a line of trust for every tube', async () => {
    expect(fitted.err).toBe('');
    expect(fitted.code).toBe(0);
    const profile = readProfile(readFileSync(PROFILE, 'utf8'));
    expect(profile.tubes.map((t) => t.id)).toEqual([
      'white',
      'deep-blue',
      'red-earth',
      'warm-yellow',
      'cold-green',
      'bone-black',
    ]);
    for (const tube of profile.tubes)
      expect(fitted.out).toMatch(new RegExp(`^${tube.id} .*Read as spectra`, 'm'));
    expect(fitted.out).toMatch(
      /^tube +rungs +residual +left out +checks +MCDM +weighing +doubt +mostly from +trust$/m,
    );
    expect(fitted.out).toMatch(
      /^film +contrast at 2 x +Y +standards +hides 0\.98 at +undertone.*half strength$/m,
    );
  });

  it('says the same as JSON', async () => {
    const { out, code } = await cli('fit', SET, '--json');
    expect(code).toBe(0);
    const report = JSON.parse(out) as {
      tubes: FittedTube[];
    };
    expect(report.tubes).toHaveLength(6);
    const blue = report.tubes[1]!;
    expect(blue).toMatchObject({ id: 'deep-blue', rungs: 4 });
    expect(blue.checks!.count).toBeGreaterThan(10);
    const shares = Object.values(blue.doubt.shares);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    expect(blue.doubt.shares[blue.doubt.dominant]).toBe(Math.max(...shares));
    const { contrast, fullHiding } = blue.film;
    expect(contrast.low).toBeLessThan(contrast.value);
    expect(contrast.high).toBeGreaterThan(contrast.value);
    expect(contrast.scope.iso6504).toBe(false);
    expect(fullHiding.low).toBeLessThan(fullHiding.X);
    expect(fullHiding.micrometres).toBeNull();
    expect(blue.halfStrength!.low).toBeLessThan(blue.halfStrength!.parts);
    expect(report.tubes[0]!.halfStrength).toBeNull();
  }, 120_000);

  it('tells films in micrometres, strength, and the drying shift of the same swatches read again', async () => {
    const set = JSON.parse(readFileSync(SET, 'utf8')) as SwatchSet;
    // Two tubes are enough, the blue's masstone drawn down at 60 um over the black card.
    const kept = set.swatches.filter((s) =>
      Object.keys(s.masses ?? {}).every((id) => ['white', 'deep-blue', 'red-earth'].includes(id)),
    );
    const instrument = set.instrument as { wavelengths: number[] };
    const card = { id: 'black card', reflectance: instrument.wavelengths.map(() => 0.01) };
    const masstone = kept.find(
      (s) => s.masses?.['deep-blue'] === 1 || Object.keys(s.masses ?? {}).join() === 'deep-blue',
    )!;
    const film = {
      ...masstone,
      id: 'blue film',
      film: { thickness: 60, drawdown: 'blue film' },
      backing: card.id,
    };
    const wet = { ...set, backings: [card], swatches: [...kept, film], checks: [] };
    const dry = {
      ...wet,
      swatches: [...kept, film].map((s) => ({
        ...s,
        ageDays: 28,
        readings: s.readings.map((r) => r.map((v) => v + 0.01)),
      })),
    };
    const [wetFile, dryFile] = [join(folder, 'wet.json'), join(folder, 'dry.json')];
    writeFileSync(wetFile, JSON.stringify(wet));
    writeFileSync(dryFile, JSON.stringify(dry));
    const refused = await cli('fit', wetFile, '--film', 'thin');
    expect(refused.err).toMatch(/--film "thin" is no thickness; give micrometres of wet film as 50um/);
    const { out, code } = await cli(
      'fit',
      wetFile,
      '--again',
      dryFile,
      '--film',
      '40um',
      '--against',
      'red-earth',
      '--json',
    );
    expect(code).toBe(0);
    const { tubes } = JSON.parse(out) as { tubes: FittedTube[] };
    const blue = tubes.find((t) => t.id === 'deep-blue')!;
    expect(blue.film.contrast.micrometres).toBeCloseTo(40, 9);
    expect(blue.film.fullHiding.micrometres!.low).toBeLessThan(blue.film.fullHiding.micrometres!.value);
    expect(blue.film.scattering!.value).toHaveLength(36);
    expect(blue.film.scattering!.low[17]).toBeLessThan(blue.film.scattering!.value[17]!);
    expect(blue.strengthPercent!.low).toBeGreaterThan(0);
    expect(blue.drying.length).toBeGreaterThan(2);
    expect(blue.drying[0]).toMatchObject({ beyondNoise: true, dryDays: 28 });
  }, 120_000);

  it('refuses what is no swatch set in one sentence', async () => {
    const cases: [string, RegExp][] = [
      ['nothing.json', /is not there; name a file\.$/],
      [folder, /is a folder; name a file\.$/],
      [PROFILE, /is a palette profile; a swatch set is needed here/],
    ];
    const broken = join(folder, 'broken.json');
    writeFileSync(broken, '{"format":"swatch-set",');
    cases.push([broken, /is not JSON/]);
    const newer = join(folder, 'newer.json');
    writeFileSync(newer, '{"format":"swatch-set","version":2}');
    cases.push([newer, /version 2; this program reads version 1/]);
    for (const [file, sentence] of cases) {
      const { code, out, err } = spawned('fit', file);
      expect(err.trim(), file).toMatch(sentence);
      expect(err.trim().split('\n'), file).toHaveLength(1);
      expect(out).toBe('');
      expect(code).toBe(1);
    }
  }, 120_000);
});

describe('check', () => {
  it('prints exactly wavelengths, checks and summary, and foretells the transfer model', async () => {
    const { out, code, err } = await cli('check', PROFILE, SET, '--json');
    expect(err).toBe('');
    expect(code).toBe(0);
    const report = JSON.parse(out) as {
      wavelengths: number[];
      checks: { id: string; reflectance: number[]; deltaE00: number; inside95: boolean }[];
      summary: { count: number; meanDeltaE00: number };
    };
    expect(Object.keys(report)).toEqual(['wavelengths', 'checks', 'summary']);
    expect(report.wavelengths).toHaveLength(36);
    expect(report.checks).toHaveLength(120);
    for (const check of report.checks) {
      expect(Object.keys(check)).toEqual(['id', 'reflectance', 'deltaE00', 'inside95']);
      expect(check.reflectance).toHaveLength(36);
    }
    const mean = report.checks.reduce((sum, c) => sum + c.deltaE00, 0) / 120;
    expect(report.summary).toMatchObject({ count: 120 });
    expect(report.summary.meanDeltaE00).toBeCloseTo(mean, 10);
    // What the trial of this fit reached on the same set was 0.43; the promise is 0.45.
    expect(mean).toBeLessThan(0.45);
  });

  it('takes another illuminant and observer, and refuses what it does not know', async () => {
    const a = JSON.parse(
      (await cli('check', PROFILE, SET, '--json', '--illuminant', 'A', '--observer', '2')).out,
    ) as { summary: { meanDeltaE00: number } };
    const d = JSON.parse((await cli('check', PROFILE, SET, '--json')).out) as {
      summary: { meanDeltaE00: number };
    };
    expect(a.summary.meanDeltaE00).not.toBe(d.summary.meanDeltaE00);
    const odd = await cli('check', PROFILE, SET, '--illuminant', 'candle');
    expect(odd.code).toBe(2);
    expect(odd.err).toMatch(/^Illuminant "candle" is not known; use one of/);
  });
});

describe('predict', () => {
  it('gives reflectance on the grid, XYZ, Lab, value, lean and interval', async () => {
    const { out, code } = await cli('predict', PROFILE, '--masses', 'deep-blue=1,white=3', '--json');
    expect(code).toBe(0);
    const said = JSON.parse(out) as {
      wavelengths: number[];
      reflectance: number[];
      Lab: { L: number };
      XYZ: { Y: number };
      value: number;
      interval: { deltaE00: number; value: [number, number]; lean: [number, number] };
    };
    expect(said.wavelengths).toHaveLength(36);
    expect(said.reflectance).toHaveLength(36);
    expect(said.interval.value[0]).toBeLessThan(said.value);
    expect(said.interval.value[1]).toBeGreaterThan(said.value);
    expect(said.interval.deltaE00).toBeGreaterThan(0);
    // Only ratios count.
    const tenfold = JSON.parse(
      (await cli('predict', PROFILE, '-m', 'white=30,deep-blue=10', '--json')).out,
    ) as typeof said;
    tenfold.reflectance.forEach((r, i) => expect(r).toBeCloseTo(said.reflectance[i]!, 12));
  });

  it('agrees with check on the same mixture', async () => {
    const checks = (
      JSON.parse((await cli('check', PROFILE, SET, '--json')).out) as {
        checks: { id: string; reflectance: number[] }[];
      }
    ).checks;
    const set = JSON.parse(readFileSync(SET, 'utf8')) as {
      checks: { id: string; masses: Record<string, number> }[];
    };
    const { id, masses } = set.checks[7]!;
    const list = Object.entries(masses)
      .map(([tube, mass]) => `${tube}=${mass}`)
      .join(',');
    const said = JSON.parse((await cli('predict', PROFILE, '-m', list, '--json')).out) as {
      reflectance: number[];
    };
    const checked = checks.find((c) => c.id === id)!;
    said.reflectance.forEach((r, i) => expect(r).toBeCloseTo(checked.reflectance[i]!, 9));
  });

  it.each([
    ['blue', 2, /"blue" is no mass/],
    ['white=-1', 2, /"white=-1" is no mass/],
    ['white=1,white=2', 2, /"white" is given twice/],
    ['purple=1', 1, /no tube "purple"; it has white, deep blue \(deep-blue\)/],
    ['white=0', 1, /no paint/],
  ])('refuses the masses %j', async (masses, exit, sentence) => {
    const { code, err, out } = await cli('predict', PROFILE, '-m', masses);
    expect(err.trim()).toMatch(sentence);
    expect(out).toBe('');
    expect(code).toBe(exit);
  });
});

describe('match, add, limits and string', () => {
  it('give recipes whose prediction is the one predict gives', async () => {
    const { out, code } = await cli('match', PROFILE, '--lab', '48,2,-18', '--json');
    expect(code).toBe(0);
    const [best] = (
      JSON.parse(out) as {
        recipes: { masses: Record<string, number>; prediction: { reflectance: { value: number[] } } }[];
      }
    ).recipes;
    const list = Object.entries(best!.masses)
      .map(([tube, mass]) => `${tube}=${mass}`)
      .join(',');
    const said = JSON.parse((await cli('predict', PROFILE, '-m', list, '--json')).out) as {
      reflectance: number[];
    };
    said.reflectance.forEach((r, i) => expect(r).toBeCloseTo(best!.prediction.reflectance.value[i]!, 9));
  });

  it('add never takes paint out, and string rises in value', async () => {
    const add = JSON.parse(
      (await cli('add', PROFILE, '--pile', 'deep-blue=1,white=3', '--lab', '52,2,-18', '--json')).out,
    ) as {
      additions: { add: Record<string, number> }[];
    };
    expect(add.additions.length).toBeGreaterThan(0);
    for (const { add: masses } of add.additions)
      for (const mass of Object.values(masses)) expect(mass).toBeGreaterThan(0);
    const string = JSON.parse((await cli('string', PROFILE, '--steps', '5', '--json')).out) as {
      steps: { value: number }[];
    };
    const values = string.steps.map((s) => s.value);
    expect(values).toEqual(values.toSorted((a, b) => a - b));
    expect(values).toHaveLength(5);
  }, 120_000);

  it('refuse a colour no surface has and a wish named twice', async () => {
    expect((await cli('match', PROFILE, '--lab', '148,0,0')).err).toMatch(/L\* runs from 0 \(black\) to 100/);
    expect((await cli('match', PROFILE)).code).toBe(2);
    expect((await cli('match', PROFILE, '--lab', '1,2')).err).toMatch(/three numbers/);
  });
});

describe('convert and compare', () => {
  it('carry a swatch set through CSV and its sidecar and back, and a profile through CGATS.17', async () => {
    const csv = join(folder, 'readings.csv');
    const there = await cli('convert', SET, '-o', csv);
    expect(there.code).toBe(0);
    expect(there.err).toContain('Not carried over: Noise-free truths');
    const back = JSON.parse((await cli('convert', csv, '-o', '-', '--format', 'json')).out) as {
      swatches: { readings: number[][] }[];
    };
    const set = JSON.parse(readFileSync(SET, 'utf8')) as typeof back;
    expect(back.swatches.map((s) => s.readings)).toEqual(set.swatches.map((s) => s.readings));
    const table = join(folder, 'palette.txt');
    await cli('convert', PROFILE, '-o', table);
    const reflectance = async (file: string): Promise<number[]> =>
      (
        JSON.parse((await cli('predict', file, '-m', 'red-earth=1,white=2', '--json')).out) as {
          reflectance: number[];
        }
      ).reflectance;
    expect(await reflectance(table)).toEqual(await reflectance(PROFILE));
  });

  it('compare finds no difference between a profile and itself', async () => {
    const profile = JSON.parse(readFileSync(PROFILE, 'utf8')) as { tubes: { id: string }[] };
    const small = join(folder, 'small.json');
    const tubes = profile.tubes.filter((t) => ['white', 'deep-blue'].includes(t.id));
    writeFileSync(small, JSON.stringify({ ...profile, tubes }));
    const { out, code } = await cli('compare', small, small, '--json');
    expect(code).toBe(0);
    const same = JSON.parse(out) as {
      tubes: { olderId: string; colours: { deltaE00: number }[] }[];
      gone: string[];
    };
    expect(same.tubes.map((t) => t.olderId)).toEqual(['deep-blue']);
    for (const colour of same.tubes[0]!.colours) expect(colour.deltaE00).toBeCloseTo(0, 9);
    expect(same.gone).toEqual([]);
  });
});
