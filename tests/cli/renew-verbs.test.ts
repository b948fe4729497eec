import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  DEMO_BLACK,
  DEMO_DEEP_BLUE,
  DEMO_RED_EARTH,
  DEMO_WHITE,
} from '../../src/device/practice/paints/demo-rack.ts';
import { readProfile } from '../../src/profile/read.ts';
import { madeLadders, madeSet } from '../profile/made-sets.ts';
import { cli, spawned } from './run-cli.ts';

/*
 * Invented paints read by radiative transfer: a profile, a second tube of its blue at 130 % of the strength, a second
 * white at 60 % of the scattering.
 */
const folder = mkdtempSync(join(tmpdir(), 'tintladder-renew-'));
const at = (name: string): string => join(folder, name);
const write = (name: string, document: unknown): void => writeFileSync(at(name), JSON.stringify(document));
const times = (v: Float64Array, by: number): Float64Array => v.map((x) => x * by);
const stronger = {
  ...DEMO_DEEP_BLUE,
  id: 'new-blue',
  absorption: times(DEMO_DEEP_BLUE.absorption, 1.3),
  scattering: times(DEMO_DEEP_BLUE.scattering, 1.3),
};
const weakWhite = { ...DEMO_WHITE, id: 'weak-white', scattering: times(DEMO_WHITE.scattering, 0.6) };

beforeAll(async () => {
  write('first.json', madeLadders({ white: DEMO_WHITE, paints: [DEMO_DEEP_BLUE], seed: 1 }));
  write('second.json', madeLadders({ white: weakWhite, paints: [DEMO_RED_EARTH], seed: 2 }));
  write('short.json', madeLadders({ white: DEMO_WHITE, paints: [stronger], seed: 3, tints: [4] }));
  const [w, o, k] = [DEMO_WHITE.id, weakWhite.id, DEMO_BLACK.id];
  const bridge = [{ [w]: 1 }, { [o]: 1 }, { [k]: 1 }, { [k]: 1, [w]: 4 }, { [k]: 1, [o]: 4 }];
  write('bridge.json', madeSet({ white: DEMO_WHITE, paints: [weakWhite, DEMO_BLACK], seed: 4 }, bridge));
  for (const name of ['first', 'second'])
    expect((await cli('fit', at(`${name}.json`), '-o', at(`${name}-profile.json`))).code).toBe(0);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const profileIn = (name: string) => readProfile(readFileSync(at(name), 'utf8'));

describe('replace', () => {
  const args = [at('first-profile.json'), 'demo-deep-blue', at('short.json'), '--id', 'blue-2'];

  it('writes the new profile, says what differs and carries recipes over', () => {
    const ran = spawned(
      'replace',
      ...args,
      '--recipe',
      'demo-deep-blue=2,demo-white=8',
      '-o',
      at('next.json'),
    );
    expect(ran.err).toBe('');
    expect(ran.code).toBe(0);
    expect(ran.out).toMatch(/It is stronger: 1[23]\d %/);
    expect(ran.out).toMatch(
      /The colour is kept: 1\.[456]\d g of Demo deep blue \(blue-2\) \(was 2\.00 g of Demo deep blue \(demo-deep-blue\)\)/,
    );
    expect(profileIn('next.json').tubes.map((t) => t.id)).toEqual(['demo-white', 'blue-2']);
  });

  it('refuses a tube that is not there with one sentence', () => {
    const ran = spawned('replace', args[0]!, 'nobody', args[2]!, '--id', 'x', '-o', '-');
    expect(ran.code).toBe(1);
    expect(ran.err.trim()).toMatch(/^The profile has no tube "nobody"[^\n]*$/);
  });
});

describe('merge and compare through a bridge', () => {
  it('makes one profile of two whites', () => {
    const ran = spawned(
      'merge',
      at('first-profile.json'),
      at('second-profile.json'),
      '--bridge',
      at('bridge.json'),
      '-o',
      at('merged.json'),
    );
    expect(ran.err).toBe('');
    expect(ran.out).toMatch(/The second white scatters (5[6-9]|6[0-4]) % as much/);
    expect(profileIn('merged.json').tubes.map((t) => t.id)).toEqual([
      'demo-white',
      'demo-deep-blue',
      'weak-white',
      'demo-red-earth',
    ]);
  });

  it('makes one tube of two fits on one white, without a bridge, and two where asked to', async () => {
    const both = ['merge', at('first-profile.json'), at('first-profile.json')];
    const { out, code } = await cli(...both, '-o', at('combined.json'));
    expect(code).toBe(0);
    expect(out).toMatch(
      /"demo-deep-blue" is one tube fitted twice, read as spectra and as spectra: they agree/,
    );
    expect(profileIn('combined.json').tubes).toHaveLength(2);
    await cli(...both, '--same-ids', 'apart', '-o', at('apart.json'));
    expect(profileIn('apart.json').tubes.map((t) => t.id)).toContain('demo-deep-blue-2');
    const odd = await cli(...both, '--same-ids', 'both', '-o', at('odd.json'));
    expect(odd.code).toBe(2);
    expect(odd.err).toMatch(/say combined or apart/);
  });

  it('compares only with it', async () => {
    const pair = ['--pair', 'demo-deep-blue=demo-red-earth'];
    const without = await cli('compare', at('first-profile.json'), at('second-profile.json'), ...pair);
    expect(without.code).toBe(1);
    expect(without.err).toMatch(/strong dark tube/);
    const files = [at('first-profile.json'), at('second-profile.json')];
    const { code, out } = await cli('compare', ...files, ...pair, '--bridge', at('bridge.json'), '--json');
    expect(code).toBe(0);
    expect((JSON.parse(out) as { tubes: unknown[] }).tubes).toHaveLength(1);
  });
});

describe('reread', () => {
  it('holds a set against itself', async () => {
    const { out, code } = await cli('reread', at('first.json'), at('first.json'));
    expect(code).toBe(0);
    expect(out).toMatch(/The palette holds/);
  });

  it('finds a palette that went dark, and asks for three swatches', async () => {
    const set = JSON.parse(readFileSync(at('first.json'), 'utf8')) as {
      swatches: { readings: number[][] }[];
    };
    const darker = set.swatches.map((s) => ({
      ...s,
      readings: s.readings.map((r) => r.map((v) => 0.93 * v)),
    }));
    write('darker.json', { ...set, swatches: darker });
    const { out } = await cli('reread', at('first.json'), at('darker.json'), '--json');
    expect((JSON.parse(out) as { verdict: string }).verdict).toBe('measure again');
    write('two.json', { ...set, swatches: set.swatches.slice(0, 2) });
    const few = await cli('reread', at('first.json'), at('two.json'));
    expect(few.code).toBe(1);
    expect(few.err).toMatch(/three are needed/);
  });
});

describe('convert', () => {
  it('takes answers for what a file leaves open, and says what it assumed', async () => {
    writeFileSync(at('open.txt'), openFile);
    const asked = await cli('convert', at('open.txt'), '-o', at('x.json'));
    expect(asked.code).toBe(1);
    expect(asked.err).toMatch(/say which/);
    const answers = ['--scale', 'per cent', '--geometry', '45/0'];
    const told = await cli('convert', at('open.txt'), ...answers, '-o', at('x.cxf'));
    expect(told).toMatchObject({ code: 0, err: '' });
    expect(readFileSync(at('x.cxf'), 'utf8')).toContain('>0.001 0.0011</');
    const set = await cli('convert', at('open.txt'), ...answers, '-o', at('x.json'));
    expect(set.err).toMatch(/does not say which tubes were weighed/);
    const bright = openFile.replace('0.1 0.11', '45 46.5');
    writeFileSync(at('bright.txt'), bright);
    const assumed = await cli('convert', at('bright.txt'), '-o', at('y.csv'));
    expect(assumed.err).toMatch(
      /Assumed: The largest spectral number is 46.5, so the file was read as per cent/,
    );
  });
});

const openFile = `CGATS.17
NUMBER_OF_FIELDS 3
BEGIN_DATA_FORMAT
SAMPLE_ID NM400 NM410
END_DATA_FORMAT
NUMBER_OF_SETS 1
BEGIN_DATA
a 0.1 0.11
END_DATA
`;
