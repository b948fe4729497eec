/** Sentences of the bench, made by the rooms that state them, all have their German: none is left behind unseen. */
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { whiteDue } from '../../src/calibrate/reading/white-bracket.ts';
import { warmUp } from '../../src/calibrate/reading/warm-up.ts';
import { trustLine } from '../../src/fit/evidence/trust.ts';
import type { RungEvidence } from '../../src/fit/palette-fit.ts';
import { changeSettings } from '../../web/src/state/settings.ts';
import { benchSays, findingSays, trustSays } from '../../web/src/text/findings.ts';
import { saidReady } from '../../web/src/text/said.ts';

beforeAll(async () => {
  changeSettings({ language: 'de' });
  await saidReady();
});
afterEach(() => changeSettings({ language: 'en' }));

const rungs = (deltaE: number | undefined): RungEvidence[] => [{ leftOutDeltaE00: deltaE } as RungEvidence];
const kinds = ['spectral', 'bands', 'tristimulus'] as const;
const LINES = kinds.flatMap((kind) =>
  [0.4, 2.25, 7, undefined].flatMap((dE) => [true, false].map((m) => trustLine(kind, rungs(dE), m))),
);
const whites = (count: number, slope: number) =>
  Array.from({ length: count }, (_, i) => ({
    signal: Float64Array.of(1000 * (1 + slope * i), 2000 * (1 + slope * i)),
    atMs: 2300 * i,
  }));
const SENTENCES = [
  whiteDue({ readingsSinceWhite: 1000, whiteAgeMs: 0 }),
  whiteDue({ readingsSinceWhite: 0, whiteAgeMs: 1e9 }),
  whiteDue({ readingsSinceWhite: 0, whiteAgeMs: 0, kelvinChange: 9.25 }),
  whiteDue({ readingsSinceWhite: 0, whiteAgeMs: 0, kelvinChange: -9.25 }),
  warmUp([]).sentence,
  warmUp(whites(4, 0)).sentence,
  warmUp(whites(10, 0)).sentence,
  warmUp(whites(10, 0.01)).sentence,
  warmUp(whites(10, 0.01), true).sentence,
].map(String);

describe('in German', () => {
  it.each(LINES)('the trust line "%s" is German, with a decimal comma', (line) => {
    changeSettings({ language: 'de' });
    const said = trustSays(line);
    expect(said).toMatch(/gemessen/);
    expect(said).not.toMatch(/\bread\b|rungs?\b|\d\.\d/);
  });

  it.each(SENTENCES)('"%s" is German, with a decimal comma', (sentence) => {
    changeSettings({ language: 'de' });
    expect(sentence).not.toBe('undefined');
    expect(benchSays(sentence)).not.toBe(sentence);
    expect(benchSays(sentence)).not.toMatch(/\d\.\d/);
  });

  it('a line of another program, and a sentence not known here, stay as they came', () => {
    changeSettings({ language: 'de' });
    expect(trustSays('Read as spectra once; measured twice.')).toBe('Read as spectra once; measured twice.');
    expect(findingSays({ code: 'other', sentence: 'Something else.' })).toBe('Something else.');
  });
});

describe('in English', () => {
  beforeEach(() => changeSettings({ language: 'en' }));

  it('sentences stay as the bench wrote them', () => {
    for (const line of LINES) expect(trustSays(line)).toBe(line);
    for (const sentence of SENTENCES) expect(benchSays(sentence)).toBe(sentence);
  });

  it('a reading kept while the lamp warms up is said to count, and the painter told when to read it again', () => {
    const finding = { code: 'settling', sentence: 'The lamp is still warming up; wait.' };
    expect(findingSays(finding, true)).toMatch(/^It counts.*read here again\.$/);
    expect(findingSays(finding)).toBe(finding.sentence);
  });
});
