/** Outside check: a scalar case worked by hand (two normal measurements combined by inverse variances). */
import { describe, expect, it } from 'vitest';
import { GRID_SIZE } from '../../src/colour/grid.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { compareProfiles } from '../../src/profile/compare/compare-profiles.ts';
import { tubeDifference } from '../../src/profile/compare/tube-difference.ts';
import { yearlyReread } from '../../src/profile/drift/yearly-reread.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { oldTubeAsPrior } from '../../src/profile/replace/old-tube-as-prior.ts';
import { historyOf, putInPlace } from '../../src/profile/replace/put-in-place.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { inventedProfile } from './invented-profile.ts';

const constants = (lnK: number, lnS: number, sd: number): TubeConstants => ({
  id: 'x',
  lnK: new Float64Array(GRID_SIZE).fill(lnK),
  lnS: new Float64Array(GRID_SIZE).fill(lnS),
  own: Array.from({ length: 2 * GRID_SIZE }, (_, j) =>
    Float64Array.from({ length: 2 * GRID_SIZE }, (_v, i) => (i === j ? sd : 0)),
  ),
  shared: [],
});
const sdAt = (t: TubeConstants, i: number): number => Math.sqrt(t.own.reduce((v, c) => v + c[i]! ** 2, 0));

describe('the old tube as prior for the new one', () => {
  it('weighs two equal measurements of the same paint equally: the mean, and the doubt over root two', () => {
    const r = oldTubeAsPrior(constants(0.5, -1, 0.02), constants(0.5, -1, 0.02));
    expect(r.constants.lnK[10]).toBeCloseTo(0.5, 6);
    expect(r.unlikeness).toBeLessThan(0.01);
    expect(r.oldTubeWeight).toBeGreaterThan(0.4);
    expect(sdAt(r.constants, 10)).toBeLessThan(0.02);
    expect(sdAt(r.constants, 10)).toBeGreaterThan(0.02 / Math.SQRT2 - 1e-4);
    expect(r.words).toMatch(/much like the old one/);
  });

  it('believes the new reading where the tubes differ by far more than tubes of one pigment do', () => {
    const edge = constants(0.5, -1, 0.02);
    const moved = { ...edge, lnK: edge.lnK.map((v, i) => (i > 15 && i < 25 ? v + 1.2 : v)) };
    const r = oldTubeAsPrior(moved, edge);
    expect(r.constants.lnK[20]).toBeGreaterThan(1.65);
    expect(r.unlikeness).toBeGreaterThan(4);
    expect(r.words).toMatch(/unlike the old one/);
  });

  it('keeps the old tube where the short ladder says little', () => {
    const r = oldTubeAsPrior(constants(0.62, -0.4, 0.5), constants(0.5, -1, 0.02));
    expect(Math.abs(r.constants.lnK[20]! - 0.5)).toBeLessThan(0.2);
    expect(r.oldTubeWeight).toBeGreaterThan(0.5);
  });
});

describe("a tube put in an old one's place", () => {
  const profile = inventedProfile();
  const blue = paletteOf(profile).tubes.find((t) => t.id === 'blue')!;
  const tube = { id: 'blue-2', label: 'invented blue, new tube', pigments: ['PB29'] };

  it('gives a profile that reads back, with the change in its history', () => {
    const next = putInPlace(
      profile,
      'blue',
      { tube, constants: { ...blue, id: 'blue-2' } },
      '2026-11-01T09:00:00Z',
    );
    expect(readProfile(next).tubes.map((t) => t.id)).toEqual(['white', 'blue-2', 'earth']);
    expect(historyOf(next)).toEqual([
      { when: '2026-11-01T09:00:00Z', what: 'tube replaced', tube: 'blue-2', replaces: 'blue' },
    ]);
  });

  it('is refused for a tube that is not there, for the white, and for an id already taken', () => {
    const put =
      (id: string, newId = 'blue-2') =>
      () =>
        putInPlace(profile, id, { tube: { ...tube, id: newId }, constants: blue }, '2026-11-01T09:00:00Z');
    expect(put('green')).toThrow(/no tube "green"/);
    expect(put('white')).toThrow(/through a bridge: let one strong dark tube/);
    expect(put('blue', 'earth')).toThrow(/already has a tube "earth"/);
  });
});

describe('the difference report', () => {
  const profile = inventedProfile();

  it('finds nothing between a tube and itself', () => {
    const d = tubeDifference(paletteOf(profile), 'blue', 'blue');
    expect(d.colours.every((c) => c.deltaE00 < 1e-9 && !c.beyondDoubt)).toBe(true);
    expect(d.strengthPercent.value).toBeCloseTo(100, 9);
    expect(d.words).toEqual(['No difference is larger than the doubt of the two measurements.']);
  });

  it('reads twice the absorption and scattering as nearly twice the strength, with the masstone unchanged', () => {
    const double = inventedProfile();
    const tube = double.tubes[1]!;
    double.tubes[1] = { ...tube, K: tube.K.map((v) => 2 * v), S: tube.S.map((v) => 2 * v) };
    const { tubes } = compareProfiles(profile, double);
    const blue = tubes.find((t) => t.newerId === 'newer/blue')!;
    // q of a 1:4 tint: (0.2 K + 0.8 Kw) / (0.2 S + 0.8); doubling K and S gives 2 (0.2 S + 0.8)/(0.4 S + 0.8) times, 1.97 here.
    expect(blue.strengthPercent.value).toBeGreaterThan(190);
    expect(blue.strengthPercent.value).toBeLessThan(200);
    expect(blue.colours[0]!.deltaE00).toBeLessThan(1e-9);
    expect(blue.words.join(' ')).toMatch(/stronger.*use less/);
  });

  it('is refused without a bridge when the whites differ', () => {
    const other = { ...inventedProfile(), white: 'earth' };
    expect(() => compareProfiles(profile, other)).toThrow(/different whites.*as the bridge/);
  });
});

describe('the yearly re-read', () => {
  const lab = (L: number, a: number, b: number): Lab => ({ L, a, b, white: 'D65/10deg' });
  const still = (id: string, role: 'white' | 'tint' | 'masstone', c: Lab) => ({
    id,
    role,
    first: c,
    again: c,
    mcdm: 0.1,
  });
  const three = [
    still('w', 'white', lab(96, 0, 2)),
    still('t', 'tint', lab(60, 5, -20)),
    still('m', 'masstone', lab(20, 10, -30)),
  ];

  it('needs three swatches', () => expect(() => yearlyReread(three.slice(1))).toThrow(/three are needed/));
  it('holds when nothing moved', () => expect(yearlyReread(three).verdict).toBe('holds'));
  it('points to the instrument when all went lighter together', () => {
    const r = yearlyReread(three.map((s) => ({ ...s, again: { ...s.again, L: s.again.L + 2 } })));
    expect(r.verdict).toBe('measure again');
    expect(r.words.join(' ')).toMatch(/white tile or the instrument/);
  });
  it('names the yellowing of a white', () => {
    const r = yearlyReread(
      three.map((s) => (s.role === 'masstone' ? s : { ...s, again: { ...s.again, b: s.again.b + 3 } })),
    );
    expect(r.words.join(' ')).toMatch(/yellow/);
  });
});
