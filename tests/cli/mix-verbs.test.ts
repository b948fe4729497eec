import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { writeProfile } from '../../src/profile/write.ts';
import { inventedProfile } from '../profile/invented-profile.ts';
import { cli } from './run-cli.ts';

/* What the mixing verbs print, from a palette of three invented tubes. */
const folder = mkdtempSync(join(tmpdir(), 'tintladder-mix-'));
const PROFILE = join(folder, 'palette.json');
const profile = inventedProfile();
writeFileSync(PROFILE, writeProfile(profile));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const [one, two] = profile.tubes.map((t) => t.id).filter((id) => id !== profile.white) as [string, string];
const MIX = `${one}=1,white=6`;

async function json<T>(...args: string[]): Promise<T> {
  const { out, err, code } = await cli(...args, '--json');
  expect(err).toBe('');
  expect(code).toBe(0);
  return JSON.parse(out) as T;
}

describe('bad input gets one sentence and an exit code', () => {
  it.each([
    ['a negative mass', ['predict', PROFILE, '-m', `${one}=-1`], 2, /is no mass/],
    ['a mass that is not a number', ['predict', PROFILE, '-m', `${one}=NaN`], 2, /is no mass/],
    ['no paint', ['predict', PROFILE, '-m', `${one}=0`], 1, /no paint/],
    ['a tube that is not there', ['nudge', PROFILE, '-m', 'nobody=1'], 1, /no tube "nobody"/],
    ['a Lab that is not a number', ['match', PROFILE, '--lab', 'NaN,0,0'], 2, /three numbers/],
    ['a colour off the scale', ['match', PROFILE, '--lab', '148,0,0'], 1, /no surface's/],
    ['a colour outside the spectrum locus', ['reach', PROFILE, '--lab', '50,-120,120'], 1, /spectrum locus/],
    ['a scale that cannot be', ['match', PROFILE, '--lab', '60,0,0', '--scale', '50'], 2, /scaleResolution/],
    ['a film of no thickness', ['predict', PROFILE, '-m', MIX, '--film', 'thin'], 2, /--film says "thin"/],
    [
      'micrometres the profile does not know',
      ['predict', PROFILE, '-m', MIX, '--film', '50', '--micrometres'],
      1,
      /knows no film thickness/,
    ],
    ['a glaze without a film', ['predict', PROFILE, '-m', MIX, '--glaze', `${one}=1@1`], 2, /over a film/],
    ['the same tube twice', ['between', PROFILE, one, one], 1, /with itself/],
    ['an end off the scale', ['string', PROFILE, '--from', '12'], 2, /Munsell values run from 0 to 10/],
    [
      'volume without densities',
      ['parts', PROFILE, '-m', MIX, '--lab', '60,0,0', '--volume'],
      1,
      /density of every tube/,
    ],
  ] as const)('%s', async (_, args, exit, sentence) => {
    const { out, err, code } = await cli(...args);
    expect(out).toBe('');
    expect(code).toBe(exit);
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/failed at this|\n.*\n/);
  });
});

describe('films', () => {
  it('go from undertone to impasto: each thicker film hides more and is nearer the opaque mix', async () => {
    interface Film {
      readonly contrast: number;
      readonly prediction: { readonly colour: { readonly value: number } };
    }
    const args = ['predict', PROFILE, '-m', MIX, '--film', '0.3,1,3,30', '--ground', 'black'];
    const { films, opaque } = await json<{ films: Film[]; opaque: Film['prediction'] }>(...args);
    const contrasts = films.map((f) => f.contrast);
    expect(contrasts).toEqual(contrasts.toSorted((a, b) => a - b));
    const away = films.map((f) => Math.abs(f.prediction.colour.value - opaque.colour.value));
    expect(away).toEqual(away.toSorted((a, b) => b - a));
    expect(away.at(-1)).toBeLessThan(0.01);
  });

  it('are stated under daylight, tungsten and an LED', async () => {
    const { lights } = await json<{ lights: { illuminant: string }[] }>('predict', PROFILE, '-m', MIX);
    expect(lights.map((l) => l.illuminant)).toEqual(['D65', 'D50', 'A', 'LED-B3']);
  });
});

describe('advice', () => {
  it('nudges by one just-visible step, and says which no addition makes', async () => {
    const { out } = await cli('nudge', PROFILE, '-m', MIX);
    expect(out).toMatch(/lighter +[\d.]+ g invented white/);
    const { nudges } = await json<{ nudges: { moved: number }[] }>('nudge', PROFILE, '-m', MIX);
    for (const { moved } of nudges) expect(Math.abs(moved - 1)).toBeLessThan(0.25);
  });

  it('names the dullest mix between two tubes', async () => {
    const { dullest, points } = await json<{ dullest: { chroma: number }; points: { chroma: number }[] }>(
      'between',
      PROFILE,
      one,
      two,
    );
    expect(dullest.chroma).toBe(Math.min(...points.map((p) => p.chroma)));
  });

  it('counts parts out: each longer recipe comes nearer', async () => {
    const { Lab } = await json<{ Lab: { L: number; a: number; b: number } }>('predict', PROFILE, '-m', MIX);
    const { L, a, b } = Lab;
    const { recipes } = await json<{ recipes: { parts: Record<string, number>; deltaE00: number }[] }>(
      'parts',
      PROFILE,
      '-m',
      MIX,
      '--lab',
      `${L},${a},${b}`,
    );
    expect(recipes.at(-1)).toMatchObject({ parts: { [one]: 1, white: 6 } });
    expect(recipes.map((r) => r.deltaE00)).toEqual(recipes.map((r) => r.deltaE00).toSorted((p, q) => q - p));
  });

  it('tells what one more tube adds, and whether a colour is inside', async () => {
    const { out: more } = await cli('more', PROFILE, '--chosen', 'white', one);
    expect(more).toContain(two);
    const outside = await cli('reach', PROFILE, '--lab', '50,90,20');
    expect(outside.out).toMatch(/^Outside: the nearest mix is off by/);
  });

  it('mixes with a few tubes of the profile where it is told to', async () => {
    const only = ['--only', profile.white, one];
    const wanted = ['--lab', '55,0,0'];
    const asked: [string[], (out: string) => void][] = [
      [['match', PROFILE, ...wanted], (out) => expect(out).toContain(one)],
      [['add', PROFILE, '--pile', `${profile.white}=6`, ...wanted], (out) => expect(out).toContain(one)],
      [['limits', PROFILE, '--hues', '4'], (out) => expect(out).toContain(one)],
      [['string', PROFILE, '--steps', '3'], (out) => expect(out).toContain(one)],
      [['reach', PROFILE, ...wanted], (out) => expect(out).toContain(one)],
    ];
    for (const [args, holds] of asked) {
      const answer = JSON.stringify(await json<unknown>(...args, ...only));
      holds(answer);
      expect(answer, args[0]).not.toContain(`"${two}"`);
    }
  });

  it('weighs a string and highlights in whole steps of a scale', async () => {
    const { steps } = await json<{ steps: { pour: { masses: Record<string, number> } }[] }>(
      'string',
      PROFILE,
      '--steps',
      '3',
      '--tube',
      one,
      '--from',
      '4',
      '--to',
      '8',
      '--scale',
      '0.05',
    );
    for (const { pour } of steps) {
      for (const grams of Object.values(pour.masses)) {
        expect(Math.abs(grams / 0.05 - Math.round(grams / 0.05))).toBeLessThan(1e-6);
      }
    }
  });
});
