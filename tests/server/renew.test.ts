import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  DEMO_BLACK,
  DEMO_DEEP_BLUE,
  DEMO_RED_EARTH,
  DEMO_WHITE,
} from '../../src/device/practice/paints/demo-rack.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { historyOf } from '../../src/profile/replace/put-in-place.ts';
import { type MadeOptions, madeLadders, madeSet } from '../profile/made-sets.ts';
import { TestBench } from './bench-client.ts';

/* Invented paints read by radiative transfer: the truth is theirs, not the equations'. */
const bench = new TestBench();
const times = (v: Float64Array, by: number): Float64Array => v.map((x) => x * by);
const stronger = {
  ...DEMO_DEEP_BLUE,
  id: 'blue-2',
  absorption: times(DEMO_DEEP_BLUE.absorption, 1.3),
  scattering: times(DEMO_DEEP_BLUE.scattering, 1.3),
};
const weakWhite = { ...DEMO_WHITE, id: 'weak-white', scattering: times(DEMO_WHITE.scattering, 0.6) };
const file = (document: unknown) => ({ fileName: 'made.json', text: JSON.stringify(document) });
const short = file(madeLadders({ white: DEMO_WHITE, paints: [stronger], seed: 3, tints: [4] }));
const first = madeLadders({ white: DEMO_WHITE, paints: [DEMO_DEEP_BLUE], seed: 1 });
let firstId: string;
let secondId: string;

async function imported(options: MadeOptions): Promise<string> {
  const fit = fitPalette(madeLadders(options), { leaveOneOut: false });
  const profile = profileFromFit(fit, {
    created: '2026-11-01T09:00:00Z',
    generator: { name: 'tests', version: '0' },
  });
  return (await bench.get('importFile', { body: file(profile) })).profileId!;
}

beforeAll(async () => {
  await bench.open();
  firstId = await imported({ white: DEMO_WHITE, paints: [DEMO_DEEP_BLUE], seed: 1 });
  secondId = await imported({ white: weakWhite, paints: [DEMO_RED_EARTH], seed: 2 });
}, 120_000);
afterAll(() => bench.close());

describe('a tube replaced over HTTP', () => {
  const body = {
    oldTubeId: 'demo-deep-blue',
    file: short,
    tube: { id: 'blue-2', label: 'Second blue' },
    recipes: [{ 'demo-deep-blue': 2, 'demo-white': 8 }],
  };

  it('is a look that keeps nothing, unless asked to keep it', async () => {
    const before = await bench.get('listProfiles');
    const look = await bench.get('replaceTube', { params: { profileId: firstId }, body });
    expect(look.profileId).toBeNull();
    expect(await bench.get('listProfiles')).toEqual(before);
    expect(look.strengthPercent.value).toBeGreaterThan(120);
    expect(look.recipes[0]!.outcome).toBe('kept');
    expect(Math.abs(look.recipes[0]!.masses['blue-2']! - 2 / 1.3)).toBeLessThan(0.1);
  }, 60_000);

  it('becomes the profile in use, with its history, and a tube of the rack', async () => {
    const kept = await bench.get('replaceTube', {
      params: { profileId: firstId },
      body: { ...body, keep: true },
    });
    const { profile, summary } = await bench.get('getProfile', { params: { profileId: kept.profileId! } });
    expect(summary.current).toBe(true);
    expect(profile.tubes.map((t) => t.id)).toEqual(['demo-white', 'blue-2']);
    expect(historyOf(profile)).toMatchObject([
      { what: 'tube replaced', tube: 'blue-2', replaces: 'demo-deep-blue' },
    ]);
  }, 60_000);

  it('is refused with one sentence for a tube that is not there and for a tube of another palette', async () => {
    const params = { profileId: firstId };
    const nobody = await bench.refusal('replaceTube', { params, body: { ...body, oldTubeId: 'nobody' } });
    expect(nobody).toMatchObject({ status: 422 });
    expect(nobody.detail).toMatch(/no tube "nobody"/);
    const tube = { id: 'demo-red-earth', label: 'x' };
    expect((await bench.refusal('replaceTube', { params, body: { ...body, tube } })).detail).toMatch(
      /another palette/,
    );
  }, 60_000);
});

describe('two whites merged over HTTP', () => {
  const [w, o, k] = [DEMO_WHITE.id, weakWhite.id, DEMO_BLACK.id];
  const bridge = file(
    madeSet({ white: DEMO_WHITE, paints: [weakWhite, DEMO_BLACK], seed: 4 }, [
      { [w]: 1 },
      { [o]: 1 },
      { [k]: 1 },
      { [k]: 1, [w]: 4 },
      { [k]: 1, [o]: 4 },
    ]),
  );

  it('become a palette of their own', async () => {
    const merged = await bench.get('mergeProfiles', { body: { first: firstId, second: secondId, bridge } });
    expect(merged.sentences[0]).toMatch(/second white scatters (5[6-9]|6[0-4]) %/);
    const { profile } = await bench.get('getProfile', { params: { profileId: merged.profileId } });
    expect(profile.tubes).toHaveLength(4);
  }, 60_000);

  it('need no bridge on one white, where an id in both is one tube', async () => {
    const merged = await bench.get('mergeProfiles', { body: { first: firstId, second: firstId } });
    expect(merged.sentences.join(' ')).toMatch(/is one tube fitted twice/);
    const { profile } = await bench.get('getProfile', { params: { profileId: merged.profileId } });
    expect(profile.tubes).toHaveLength(2);
  }, 60_000);

  it('are refused without both whites in the bridge, saying what to measure', async () => {
    const { detail } = await bench.refusal('mergeProfiles', {
      body: { first: firstId, second: secondId, bridge: short },
    });
    expect(detail).toMatch(/strong dark tube/);
  }, 60_000);
});

describe('readings handed on', () => {
  it.each(['cgats', 'cxf', 'json'] as const)('as %s come back as the same swatches', async (format) => {
    const { paletteId } = await bench.get('importFile', { body: file(first) });
    const text = await bench.get('downloadReadings', { params: { paletteId }, query: { format } });
    // JSON is answered parsed.
    const whole = typeof text === 'string' ? text : JSON.stringify(text);
    const again = await bench.get('previewImport', { body: { fileName: `x.${format}`, text: whole } });
    expect(again).toMatchObject({ kind: 'swatch set', swatchCount: first.swatches.length, readingCount: 15 });
  });
});

describe('swatches read again over HTTP', () => {
  it('say whether the palette holds', async () => {
    const same = await bench.get('rereadPalette', { body: { first: file(first), again: file(first) } });
    expect(same.verdict).toBe('holds');
  });
});
