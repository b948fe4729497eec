/** Outside check: invented paints read by radiative transfer, which knows nothing of two-constant theory or of merging. */
import { describe, expect, it } from 'vitest';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { checkProfile } from '../../src/mix/check/check-profile.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { mergeProfiles } from '../../src/profile/merge/merge-profiles.ts';
import { fewerShared } from '../../src/profile/merge/fewer-shared.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfile } from '../../src/profile/read.ts';
import { historyOf } from '../../src/profile/replace/put-in-place.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { type InventedOptions, inventedSet } from '../fit/invented-set.ts';

const WHEN = '2026-01-01T00:00:00Z';
const SEED = 42;
const read = (kind: NonNullable<InventedOptions['kind']>, tubes = 3): PaletteProfile =>
  profileFromFit(fitPalette(inventedSet(SEED, { tubes, kind }), { leaveOneOut: false }), {
    created: WHEN,
    generator: { name: 'test', version: '1' },
  });
const spectral = read('spectral');
const bands = read('bands');
const xyz = read('tristimulus');

/** The first profile's tubes with some ids given another name, so that they are other tubes. */
const named = (profile: PaletteProfile, names: Record<string, string>): PaletteProfile => ({
  ...profile,
  tubes: profile.tubes.map((t) => ({ ...t, id: names[t.id] ?? t.id })),
});
const only = (profile: PaletteProfile, ids: readonly string[]): PaletteProfile => ({
  ...profile,
  tubes: profile.tubes.filter((t) => ids.includes(t.id)),
});
const judged = (profile: PaletteProfile) => {
  const { checks, summary } = checkProfile(paletteOf(profile), inventedSet(SEED, { tubes: 3 }));
  const regions = checks.map((c) => c.region).toSorted((a, b) => a - b);
  return { mean: summary.meanDeltaE00, inside: summary.inside95Share, region: regions[regions.length >> 1]! };
};

describe('one palette read with several instruments', () => {
  it('holds a tube that was read in bands and as spectra as one: no less near, surer, and true', () => {
    const both = judged(mergeProfiles(bands, spectral, undefined, WHEN).profile);
    const [one, two] = [judged(bands), judged(spectral)];
    expect(both.mean).toBeLessThan(1.05 * Math.min(one.mean, two.mean));
    expect(both.region).toBeLessThan(Math.min(one.region, two.region));
    expect(both.inside).toBeGreaterThanOrEqual(0.9);
  });

  it('says of each tube what it rests on, and comes back from a file as it was', () => {
    const { profile, words } = mergeProfiles(spectral, xyz, undefined, WHEN);
    expect(words[1]).toMatch(/"paint-1" is one tube fitted twice, read as spectra and as XYZ: they agree/);
    const tube = profile.tubes.find((t) => t.id === 'paint-1')!;
    expect(tube.evidence!.readings).toBe('spectral');
    expect(tube.evidence!.trust).toBe(words[1]);
    expect(tube.evidence!.rungs).toHaveLength(8);
    expect(new Set(tube.evidence!.rungs.map((r) => r.id)).size).toBe(8);
    expect(historyOf(profile).map((h) => h.what)).toEqual(['combined', 'combined', 'combined', 'combined']);
    expect(readProfile(writeProfile(profile))).toEqual(profile);
  });

  it('holds tubes of one white read with different instruments, each with its own trust and doubt', () => {
    const first = only(spectral, ['white', 'paint-1', 'paint-3']);
    const second = only(xyz, ['white', 'paint-2']);
    const { profile } = mergeProfiles(first, second, undefined, WHEN);
    expect(profile.tubes.map((t) => [t.id, t.evidence!.readings])).toEqual([
      ['white', 'spectral'],
      ['paint-1', 'spectral'],
      ['paint-3', 'spectral'],
      ['paint-2', 'tristimulus'],
    ]);
    const all = judged(profile);
    expect(all.inside).toBeGreaterThanOrEqual(0.9);
    expect(all.region).toBeGreaterThan(judged(spectral).region);
    expect(all.region).toBeLessThan(1.05 * judged(xyz).region);
  });

  it('keeps tubes of one id apart where it is asked to, and refuses to make one of two', () => {
    const apart = mergeProfiles(spectral, bands, undefined, WHEN, { sameIds: 'apart' });
    expect(apart.renamed).toEqual({
      'paint-1': 'paint-1-2',
      'paint-2': 'paint-2-2',
      'paint-3': 'paint-3-2',
    });
    expect(apart.profile.tubes).toHaveLength(7);
    const exchanged = named(bands, { 'paint-1': 'paint-2', 'paint-2': 'paint-1' });
    expect(() => mergeProfiles(spectral, exchanged, undefined, WHEN)).toThrow(/these are two tubes/);
    const pigments = (p: PaletteProfile, name: string): PaletteProfile => ({
      ...p,
      tubes: p.tubes.map((t) => (t.id === 'paint-1' ? { ...t, pigments: [name] } : t)),
    });
    expect(() =>
      mergeProfiles(pigments(spectral, 'PB29'), pigments(bands, 'PB15:3'), undefined, WHEN),
    ).toThrow(/"paint-1" is PB29 in one profile and PB15:3 in the other/);
  });

  it('holds as many merged profiles as there are: common doubt beyond the room becomes each tube’s own', () => {
    const { tubes } = paletteOf(mergeProfiles(spectral, xyz, undefined, WHEN).profile);
    const width = tubes[0]!.shared.length;
    const kept = [3, 4];
    const fewer = fewerShared(tubes, Math.floor(width / 2), kept);
    fewer.forEach((t, k) => {
      expect(t.shared).toHaveLength(Math.floor(width / 2));
      for (const j of kept) expect(t.shared[j]).toEqual(tubes[k]!.shared[j]);
      const variance = (of: typeof t, i: number): number =>
        [...of.own, ...of.shared].reduce((sum, c) => sum + c[i]! ** 2, 0);
      for (const i of [0, 20, 50]) {
        expect(Math.abs(variance(t, i) / variance(tubes[k]!, i) - 1)).toBeLessThan(2e-4);
      }
    });
  });
});
