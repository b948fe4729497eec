/** Outside check: examples/predict_mix.py, written from docs/profile-format.md in another language. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { predictReflectance, predictWithCovariance } from '../../src/fit/predict.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { ANOTHER_LANGUAGE } from '../tolerances.ts';
import { inventedProfile } from './invented-profile.ts';

const script = new URL('../../examples/predict_mix.py', import.meta.url).pathname;

function predictInPython(
  profile: PaletteProfile,
  masses: Record<string, number>,
): { R: number[]; sd: number[] } {
  const file = join(mkdtempSync(join(tmpdir(), 'tintladder-')), 'profile.json');
  writeFileSync(file, writeProfile(profile));
  const parts = Object.entries(masses).map(([id, m]) => `${id}=${m}`);
  const lines = execFileSync('python3', [script, file, ...parts], { encoding: 'utf8' })
    .trim()
    .split('\n');
  const rows = lines.map((l) => l.split(' ').map(Number));
  return { R: rows.map((r) => r[1]!), sd: rows.map((r) => r[2]!) };
}

const included: PaletteProfile = {
  ...inventedProfile(),
  geometry: 'd/8 specular included',
  surface: { form: 'specular-included', refractiveIndex: 1.5, k1: 0.04, k2: 0.6, haze: 0.001 },
};
const excluded: PaletteProfile = {
  ...inventedProfile(),
  geometry: 'd/8 specular excluded',
  discrepancy: { ...inventedProfile().discrepancy, sdHaze: 0.002 },
  surface: { form: 'specular-excluded', refractiveIndex: 1.5, k1: 0.04, k2: 0.6, haze: 0 },
};

const crowded: PaletteProfile = { ...inventedProfile(), crowding: 0.15 };

describe('a second implementation of the profile agrees', () => {
  it.each([
    ['a masstone at 45/0', inventedProfile(), { blue: 1 }],
    ['a tint at 45/0', inventedProfile(), { blue: 1, white: 4 }],
    ['a tint with a white that crowds', crowded, { blue: 1, white: 4 }],
    ['three tubes, specular included', included, { blue: 0.3, earth: 1.1, white: 2 }],
    ['three tubes, specular excluded', excluded, { blue: 0.3, earth: 1.1, white: 2 }],
  ] as [string, PaletteProfile, Record<string, number>][])('%s', (_name, profile, masses) => {
    const theirs = predictInPython(profile, masses);
    const ours = predictReflectance(paletteOf(profile), masses).measured;
    ours.forEach((r, i) => expect(Math.abs(r - theirs.R[i]!)).toBeLessThan(ANOTHER_LANGUAGE));
    const { factor } = predictWithCovariance(paletteOf(profile), masses);
    // The discrepancy's factor leaves out a ten-thousandth of its variance, so this comparison is looser.
    const FACTOR_LEFT_OUT = 2e-4;
    ours.forEach((_, i) => {
      const sd = Math.sqrt(factor.reduce((v, column) => v + column[i]! ** 2, 0));
      expect(Math.abs(sd / theirs.sd[i]! - 1)).toBeLessThan(FACTOR_LEFT_OUT);
    });
  });
});
