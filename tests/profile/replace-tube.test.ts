/**
 * Outside check: invented paints read by radiative transfer. The new tube is another batch of the old one (strength
 * within 15 %, scattering and shape a little off) or another paint under the same name; its short ladder is read in
 * three channels, or across the spectrum.
 */
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { xyzOf } from '../../src/colour/xyz.ts';
import { whitePoint } from '../../src/colour/white-point.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import {
  DEMO_BLACK,
  DEMO_DEEP_BLUE,
  DEMO_RED_EARTH,
  DEMO_WHITE,
  DEMO_YELLOW,
} from '../../src/device/practice/paints/demo-rack.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import type { TransferPaint } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { predictReflectance } from '../../src/fit/predict.ts';
import { carryRecipe } from '../../src/mix/carry-over/carry-recipe.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfile } from '../../src/profile/read.ts';
import { newTubeConstants } from '../../src/profile/replace/new-tube-constants.ts';
import { historyOf } from '../../src/profile/replace/put-in-place.ts';
import { replaceTube } from '../../src/profile/replace/replace-tube.ts';
import { PRIOR_NO_WORSE, STRENGTH_READ } from '../tolerances.ts';
import { made, madeLadders } from './made-sets.ts';

const WHEN = '2026-11-01T09:00:00Z';
const CROWDING = 0.1;
const OLD = [DEMO_DEEP_BLUE, DEMO_RED_EARTH, DEMO_YELLOW];
const profile = profileFromFit(
  fitPalette(madeLadders({ white: DEMO_WHITE, paints: OLD, seed: 1, crowding: CROWDING }), {
    leaveOneOut: false,
  }),
  { created: WHEN, generator: { name: 'tests', version: '0' } },
);
const palette = paletteOf(profile);
const WHITE = 'D65/10deg';
const lab = (R: ArrayLike<number>) => labOfReflectance(R, tristimulusWeights(WHITE));
const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;

function anotherTube(old: TransferPaint, seed: number, kind: 'batch' | 'unlike'): TransferPaint {
  const random = new SeededNoise(1000 + seed);
  const strength = kind === 'batch' ? (random.uniform() * 2 - 1) * Math.log(1.15) : 0.5 * random.normal();
  const shape = kind === 'batch' ? 0.04 : 0.5;
  const bumps = [0, 1, 2].map(() => ({ at: 400 + 300 * random.uniform(), height: shape * random.normal() }));
  const scattering = (kind === 'batch' ? 0.08 : 0.5) * random.normal();
  const bent = (nm: number): number =>
    bumps.reduce((sum, b) => sum + b.height * Math.exp(-(((nm - b.at) / 70) ** 2) / 2), 0);
  return {
    ...old,
    id: 'new',
    absorption: old.absorption.map((v, i) => v * Math.exp(strength + bent(GRID_NM[i]!))),
    scattering: old.scattering.map((v) => v * Math.exp(strength + scattering)),
  };
}

/** The same swatches as a three-channel head reads them: X, Y, Z over the white's. */
function inThreeChannels(set: SwatchSet): SwatchSet {
  const weights = tristimulusWeights(WHITE);
  const n = whitePoint(WHITE);
  return {
    ...set,
    instrument: { kind: 'tristimulus', geometry: '45/0', illuminant: 'D65', observer: '10deg' },
    noise: { sigma: 0.0006, relative: 0.002 },
    swatches: set.swatches.map((s) => ({
      ...s,
      readings: s.readings.map((r) => {
        const { X, Y, Z } = xyzOf(r, weights);
        return [X / n.X, Y / n.Y, Z / n.Z];
      }),
    })),
  };
}

function trial(seed: number, kind: 'batch' | 'unlike'): { alone: number; withOld: number } {
  const old = OLD[seed % OLD.length]!;
  const fresh = anotherTube(old, seed, kind);
  const set = madeLadders({
    white: DEMO_WHITE,
    paints: [fresh],
    seed: seed * 7 + 5,
    crowding: CROWDING,
    tints: [4],
  });
  const found = newTubeConstants(profile, old.id, inThreeChannels(set), { leaveOneOut: false });
  const rest = OLD.filter((p) => p !== old);
  const mixes = [
    { new: 1, 'demo-white': 1 },
    { new: 1, 'demo-white': 16 },
    ...rest.flatMap((p) => [
      { new: 1, [p.id]: 1 },
      { new: 1, [p.id]: 1, 'demo-white': 3 },
      { new: 1, [p.id]: 4 },
    ]),
  ];
  const off = (constants: TubeConstants): number => {
    const tubes = [...palette.tubes.filter((t) => t.id !== old.id), { ...constants, id: 'new' }];
    return mean(
      mixes.map((m) =>
        ciede2000(
          lab(made([DEMO_WHITE, ...rest, fresh], m, CROWDING)),
          lab(predictReflectance({ ...palette, tubes }, m).measured),
        ),
      ),
    );
  };
  return { alone: off(found.measured), withOld: off(found.constants) };
}

describe('a short ladder read in three channels, with the old tube as prior', () => {
  for (const kind of ['batch', 'unlike'] as const) {
    it(`predicts mixes never painted: ${kind === 'batch' ? 'another batch, better than alone' : 'another paint, no worse than alone'}`, () => {
      const trials = Array.from({ length: 10 }, (_, i) => trial(i + 1, kind));
      const alone = mean(trials.map((t) => t.alone));
      const withOld = mean(trials.map((t) => t.withOld));
      console.log(
        `${kind}: CIEDE2000 of unseen mixes ${alone.toFixed(2)} alone, ${withOld.toFixed(2)} with the old tube; ` +
          `better in ${trials.filter((t) => t.withOld < t.alone).length} of ${trials.length}`,
      );
      if (kind === 'batch') expect(withOld).toBeLessThan(alone);
      else expect(withOld).toBeLessThan(PRIOR_NO_WORSE * alone);
    });
  }
});

describe('a tube replaced end to end', () => {
  const stronger: TransferPaint = {
    ...DEMO_DEEP_BLUE,
    id: 'new',
    absorption: DEMO_DEEP_BLUE.absorption.map((v) => 1.3 * v),
    scattering: DEMO_DEEP_BLUE.scattering.map((v) => 1.3 * v),
  };
  const set = madeLadders({
    white: DEMO_WHITE,
    paints: [stronger],
    seed: 77,
    crowding: CROWDING,
    tints: [4],
  });
  const tube = { id: 'blue-2', label: 'invented blue, second tube' };

  it('gives a profile, a report and recipes: 30 % stronger, so less of it', () => {
    const r = replaceTube(profile, 'demo-deep-blue', set, tube, WHEN);
    expect(readProfile(JSON.parse(JSON.stringify(r.profile))).tubes.map((t) => t.id)).toContain('blue-2');
    expect(historyOf(r.profile).at(-1)).toMatchObject({ what: 'tube replaced', replaces: 'demo-deep-blue' });
    expect(r.prior).toBeUndefined();
    expect(Math.abs(r.difference.strengthPercent.value - 130)).toBeLessThan(STRENGTH_READ);
    expect(r.words.join(' ')).toMatch(/stronger.*use less/);
    const carried = carryRecipe(
      r.both,
      { 'demo-deep-blue': 2, 'demo-white': 8 },
      { 'demo-deep-blue': r.nameInBoth },
    );
    expect(Math.abs(carried.masses['blue-2']! - 2 / 1.3)).toBeLessThan((2 / 1.3) * (STRENGTH_READ / 100));
  });

  it('may keep its id when the same tube is measured again', () => {
    const r = replaceTube(profile, 'demo-deep-blue', set, { ...tube, id: 'demo-deep-blue' }, WHEN);
    expect(historyOf(r.profile).at(-1)?.what).toBe('measured again');
    expect(r.nameInBoth).not.toBe('demo-deep-blue');
  });

  it('is refused for a tube that is not there, a ladder without a tint, another white, another geometry', () => {
    const put =
      (s: SwatchSet, id = 'demo-deep-blue') =>
      () =>
        replaceTube(profile, id, s, tube, WHEN);
    expect(put(set, 'nobody')).toThrow(/no tube "nobody"/);
    expect(put({ ...set, swatches: set.swatches.slice(0, 2) })).toThrow(/lacks a tint/);
    expect(put({ ...set, instrument: { ...set.instrument, geometry: 'd/8 specular included' } })).toThrow(
      /old geometry/,
    );
    const grey = madeLadders({
      white: { ...DEMO_WHITE, absorption: DEMO_WHITE.absorption.map((v) => v + 0.01) },
      paints: [stronger],
      seed: 3,
      tints: [4],
    });
    expect(put(grey)).toThrow(/white of the short ladder reads/);
    const two = madeLadders({ white: DEMO_WHITE, paints: [stronger, DEMO_BLACK], seed: 3, tints: [4] });
    expect(put(two)).toThrow(/name the one that is the new tube/);
  });
});
