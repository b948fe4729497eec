/** Outside check: invented paints read by radiative transfer, which knows nothing of two-constant theory or of bridges. */
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import {
  DEMO_BLACK,
  DEMO_DEEP_BLUE,
  DEMO_RED_EARTH,
  DEMO_WHITE,
  DEMO_YELLOW,
} from '../../src/device/practice/paints/demo-rack.ts';
import type { TransferPaint } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { predictReflectance, predictWithCovariance } from '../../src/fit/predict.ts';
import { compareProfiles } from '../../src/profile/compare/compare-profiles.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { bridgeFromSet } from '../../src/profile/merge/bridge.ts';
import type { Bridge } from '../../src/profile/merge/bridge-type.ts';
import { mergeProfiles } from '../../src/profile/merge/merge-profiles.ts';
import { reexpressed } from '../../src/profile/merge/reexpress.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { MERGED_TRANSFER_MEAN, REEXPRESSED_LADDER, SAME_ARITHMETIC } from '../tolerances.ts';
import { inventedProfile } from './invented-profile.ts';
import { type MadeOptions, made, madeLadders, madeSet } from './made-sets.ts';

const WHEN = '2026-11-01T09:00:00Z';
const lab = (R: ArrayLike<number>) => labOfReflectance(R, tristimulusWeights('D65/10deg'));

/** An invented white that scatters 55 % as much as the demo white, more at the short end. */
const OTHER_WHITE: TransferPaint = {
  ...DEMO_WHITE,
  id: 'weak-white',
  label: 'Invented weak white',
  absorption: DEMO_WHITE.absorption.map((v) => 1.5 * v + 0.0001),
  scattering: DEMO_WHITE.scattering.map((v, i) => v * (0.6 - 0.1 * (i / 35))),
};

function profile(options: MadeOptions): PaletteProfile {
  const fit = fitPalette(madeLadders(options), { leaveOneOut: false });
  return profileFromFit(fit, { created: WHEN, generator: { name: 'tests', version: '0' } });
}

const known = new Map<number, ReturnType<typeof makeTwoWhites>>();
function twoWhites(crowding: number) {
  if (!known.has(crowding)) known.set(crowding, makeTwoWhites(crowding));
  return known.get(crowding)!;
}

function makeTwoWhites(crowding: number) {
  const first = profile({ white: DEMO_WHITE, paints: [DEMO_DEEP_BLUE, DEMO_RED_EARTH], seed: 1, crowding });
  const second = profile({ white: OTHER_WHITE, paints: [DEMO_YELLOW, DEMO_BLACK], seed: 2, crowding });
  const [w, o, k] = [DEMO_WHITE.id, OTHER_WHITE.id, DEMO_BLACK.id];
  const set = madeSet({ white: DEMO_WHITE, paints: [OTHER_WHITE, DEMO_BLACK], seed: 3, crowding }, [
    { [w]: 1 },
    { [o]: 1 },
    { [k]: 1 },
    { [k]: 1, [w]: 4 },
    { [k]: 1, [o]: 4 },
  ]);
  return { first, second, set };
}

/** Mixes with tubes of both profiles; none was painted for a fit. */
const ACROSS = [
  { 'demo-deep-blue': 1, 'demo-warm-yellow': 1, 'demo-white': 2 },
  { 'demo-deep-blue': 1, 'demo-warm-yellow': 4, 'demo-white': 1 },
  { 'demo-red-earth': 2, 'demo-bone-black': 1, 'demo-white': 4 },
  { 'demo-warm-yellow': 1, 'demo-white': 4 },
  { 'demo-bone-black': 1, 'demo-white': 8 },
  { 'demo-deep-blue': 1, 'weak-white': 4 },
  { 'demo-red-earth': 1, 'weak-white': 4 },
];

function offsets(merged: PaletteProfile, crowding: number) {
  const palette = paletteOf(merged);
  const paints = [DEMO_WHITE, OTHER_WHITE, DEMO_DEEP_BLUE, DEMO_RED_EARTH, DEMO_YELLOW, DEMO_BLACK];
  return ACROSS.map((recipe) => {
    const truth = lab(made(paints, recipe, crowding));
    const said = predictWithCovariance(palette, recipe);
    return { deltaE00: ciede2000(truth, said.labRegion.lab), inside: said.labRegion.contains(truth) };
  });
}
const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;

describe('two profiles on two whites, merged through a bridge', () => {
  for (const crowding of [0, 0.15]) {
    it(`predicts mixes across them as radiative transfer reads them (crowding ${crowding})`, () => {
      const { first, second, set } = twoWhites(crowding);
      const bridge = bridgeFromSet(set, paletteOf(first), paletteOf(second));
      const merged = mergeProfiles(first, second, bridge, WHEN);
      const found = offsets(merged.profile, crowding);
      const apart = offsets(
        mergeProfiles(first, second, { ...bridge, lnRatio: new Float64Array(36) }, WHEN).profile,
        crowding,
      );
      console.log(
        `crowding ${crowding}: merged mean ${mean(found.map((f) => f.deltaE00)).toFixed(2)}, worst ${Math.max(...found.map((f) => f.deltaE00)).toFixed(2)}, ` +
          `inside 95 % ${found.filter((f) => f.inside).length}/${found.length}; without the bridge mean ${mean(apart.map((f) => f.deltaE00)).toFixed(2)} CIEDE2000. ${merged.words.join(' ')}`,
      );
      expect(mean(found.map((f) => f.deltaE00))).toBeLessThan(MERGED_TRANSFER_MEAN);
      expect(mean(apart.map((f) => f.deltaE00))).toBeGreaterThan(3 * MERGED_TRANSFER_MEAN);
    });
  }

  it('is a profile that reads back, with where each tube came from', () => {
    const { first, second, set } = twoWhites(0.15);
    const {
      profile: merged,
      renamed,
      words,
    } = mergeProfiles(first, second, bridgeFromSet(set, paletteOf(first), paletteOf(second)), WHEN);
    const read = readProfile(JSON.parse(JSON.stringify(merged)));
    expect(read.tubes.map((t) => t.id)).toEqual([
      'demo-white',
      'demo-deep-blue',
      'demo-red-earth',
      'weak-white',
      'demo-warm-yellow',
      'demo-bone-black',
    ]);
    expect(read.tubes.filter((t) => t.role === 'white').map((t) => t.id)).toEqual(['demo-white']);
    expect(renamed).toEqual({});
    expect(words.join(' ')).toMatch(/second white scatters \d+ % as much/);
  });

  it('gives no smaller doubt to a tube of the second profile than it had', () => {
    const { first, second, set } = twoWhites(0);
    const { profile: merged } = mergeProfiles(
      first,
      second,
      bridgeFromSet(set, paletteOf(first), paletteOf(second)),
      WHEN,
    );
    // Of what is read, for constants and frame are doubtful together and either alone is not what a mixture shows.
    const radius = (p: PaletteProfile, parts: number): number =>
      predictWithCovariance(paletteOf(p), { 'demo-warm-yellow': 1, [OTHER_WHITE.id]: parts }).labRegion
        .radius;
    for (const parts of [0, 1, 8])
      expect(radius(merged, parts)).toBeGreaterThan(0.95 * radius(second, parts));
  });

  it('changes nothing where the second white is the first under another name, but for names', () => {
    const first = inventedProfile();
    const second: PaletteProfile = {
      ...first,
      white: 'white-b',
      tubes: first.tubes.map((t) => (t.id === 'white' ? { ...t, id: 'white-b' } : t)),
    };
    const bridge: Bridge = {
      first: 'white',
      second: 'white-b',
      geometry: '45/0',
      lnRatio: new Float64Array(36),
      factor: [],
      lnKOverS: Float64Array.from(first.tubes[0]!.K, Math.log),
      words: 'The second white scatters 100 % as much as the first, give or take 0 %.',
    };
    const { profile: merged, renamed } = mergeProfiles(first, second, bridge, WHEN);
    expect(renamed).toEqual({ blue: 'blue-2', earth: 'earth-2' });
    const [own, other] = ['blue', 'blue-2'].map((id) => merged.tubes.find((t) => t.id === id)!);
    own!.K.forEach((v, i) => expect(Math.abs(v / other!.K[i]! - 1)).toBeLessThan(SAME_ARITHMETIC));
    const { tubes } = compareProfiles(first, second, [], bridge);
    for (const t of tubes) expect(Math.abs(t.strengthPercent.value - 100)).toBeLessThan(1e-9);
  });

  it('is refused without a bridge, at another geometry, and with a bridge that says too little', () => {
    const { first, second, set } = twoWhites(0);
    const [a, b] = [paletteOf(first), paletteOf(second)];
    expect(() => mergeProfiles(first, second, undefined, WHEN)).toThrow(/strong dark tube.*1:4 with each/);
    const sphere = { ...second, geometry: 'd/8 specular included' as const };
    expect(() => mergeProfiles(first, sphere, bridgeFromSet(set, a, b), WHEN)).toThrow(
      /read the new tubes with/,
    );
    // Two whites that read alike, mixed with each other: no K/S tells them apart, whatever each scatters.
    const alike = {
      ...OTHER_WHITE,
      absorption: DEMO_WHITE.absorption.map((v) => 0.55 * v),
      scattering: DEMO_WHITE.scattering.map((v) => 0.55 * v),
    };
    const pale = madeSet({ white: DEMO_WHITE, paints: [alike], seed: 4 }, [
      { [DEMO_WHITE.id]: 1 },
      { [OTHER_WHITE.id]: 1 },
      { [DEMO_WHITE.id]: 1, [OTHER_WHITE.id]: 1 },
    ]);
    expect(() => bridgeFromSet(pale, a, b)).toThrow(/uncertain by \d+ %.*strong dark tube/);
    expect(() => bridgeFromSet(set, a, b, { second: 'nobody' })).toThrow(
      /this set has "demo-white" \(white\)/,
    );
  });
});

describe('constants under another surface', () => {
  const palette = paletteOf(inventedProfile());

  it('are the same under the same one', () => expect(reexpressed(palette, palette)).toBe(palette));

  it('read the same along the ladder', () => {
    // k2 as another fit might have estimated it: a perfect white reads the same, and the white crowds a little.
    const escape = (palette.surface.escape! * (1 - 0.57)) / (1 - palette.surface.k2);
    const frame = { surface: { ...palette.surface, k2: 0.57, escape }, crowding: 0.03 };
    const there = reexpressed(palette, frame);
    for (const recipe of [{ white: 1 }, { blue: 1 }, { blue: 1, white: 4 }, { earth: 1, white: 16 }]) {
      const off = ciede2000(
        lab(predictReflectance(palette, recipe).measured),
        lab(predictReflectance(there, recipe).measured),
      );
      expect(off).toBeLessThan(REEXPRESSED_LADDER);
    }
    const left = ciede2000(
      lab(predictReflectance(palette, { blue: 1, white: 4 }).measured),
      lab(predictReflectance({ ...palette, ...frame }, { blue: 1, white: 4 }).measured),
    );
    expect(left).toBeGreaterThan(3 * REEXPRESSED_LADDER);
  });
});
