import { afterEach, describe, expect, it } from 'vitest';
import { changeSettings } from '../../web/src/state/settings.ts';
import { adviceSays } from '../../web/src/text/advice.ts';

const next = { kind: 'repeat', parts: null, otherTubeId: null, otherLabel: null, range: 'darks' } as const;
const says = (before: number, after: number, more: object = {}): string =>
  adviceSays({
    rungId: null,
    sentence: 'As the bench says it.',
    gain: before - after,
    next: { ...next, before, after, ...more },
  });

describe('what to measure next, in words', () => {
  afterEach(() => changeSettings({ language: 'en' }));

  it('says how much of the doubt goes, where, and from what to what', () => {
    expect(says(4.1, 2)).toBe(
      'Read the masstone at three more spots: halves the doubt in darks (from 4.1 to 2.0 CIEDE2000).',
    );
    expect(says(4, 1)).toContain('takes most of the doubt');
    expect(says(4, 2.8)).toContain('takes a third off the doubt');
    expect(says(0.5, 0.45)).toContain('takes 10 % off the doubt in darks (from 0.50 to 0.45');
    expect(says(2, 1, { kind: 'tint', parts: 64, range: 'lights' })).toMatch(
      /^Add a tint of 1:64 .* in lights/,
    );
    expect(says(2, 1, { kind: 'check', otherLabel: 'Red earth' })).toMatch(/^Mix it 1:1 with Red earth/);
  });

  it('is in German where the page is, and leaves advice without figures to the bench', () => {
    changeSettings({ language: 'de' });
    expect(says(4.1, 2)).toBe(
      'Den Vollton an drei weiteren Stellen messen: halbiert den Zweifel im Dunklen (von 4,1 auf 2,0 CIEDE2000).',
    );
    expect(adviceSays({ rungId: null, sentence: 'Plain.', gain: null, next: null })).toBe('Plain.');
  });
});
