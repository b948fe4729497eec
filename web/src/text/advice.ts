import type { FitResult } from '../../../server/api/fits.ts';
import { num } from './numbers.ts';
import { said } from './said.ts';
import { words } from './words.ts';

type Suggestion = FitResult['tubes'][number]['suggestions'][number];

/** Left of the doubt, as a share, under which it is said so. The words are this project's choice. */
const MOST_GONE = 0.3;
const MORE_THAN_HALF = 0.45;
const HALVED = 0.56;
const THIRD_OFF = 0.72;
const QUARTER_OFF = 0.82;

const adviceWords = words(
  {
    repeat: 'Read the masstone at three more spots',
    drawdown: 'Draw the masstone down once more and read it',
    tint: (parts: string) => `Add a tint of 1:${parts} and read it`,
    check: (other: string) => `Mix it 1:1 with ${other} and read it as a check`,
    ranges: { darks: 'in darks', middles: 'in middle values', lights: 'in lights' },
    mostGone: 'takes most of the doubt',
    moreThanHalf: 'more than halves the doubt',
    halves: 'halves the doubt',
    third: 'takes a third off the doubt',
    quarter: 'takes a quarter off the doubt',
    some: (percent: string) => `takes ${percent} % off the doubt`,
    whole: (what: string, buys: string, where: string, before: string, after: string) =>
      `${what}: ${buys} ${where} (from ${before} to ${after} CIEDE2000).`,
  },
  {
    repeat: 'Den Vollton an drei weiteren Stellen messen',
    drawdown: 'Den Vollton noch einmal aufziehen und messen',
    tint: (parts) => `Eine Aufhellung 1:${parts} anlegen und messen`,
    check: (other) => `1:1 mit ${other} mischen und als Probe messen`,
    ranges: { darks: 'im Dunklen', middles: 'in mittleren Tonwerten', lights: 'im Hellen' },
    mostGone: 'nimmt den größten Teil des Zweifels',
    moreThanHalf: 'mehr als halbiert den Zweifel',
    halves: 'halbiert den Zweifel',
    third: 'nimmt ein Drittel des Zweifels',
    quarter: 'nimmt ein Viertel des Zweifels',
    some: (percent) => `nimmt ${percent} % des Zweifels`,
    whole: (what, buys, where, before, after) =>
      `${what}: ${buys} ${where} (von ${before} auf ${after} CIEDE2000).`,
  },
);

/** One suggestion in the language of the page. */
export function adviceSays({ next, sentence }: Suggestion): string {
  if (!next) return said(sentence);
  const t = adviceWords();
  const { kind, before, after, range, parts, otherLabel } = next;
  const what =
    kind === 'tint' ? t.tint(num(parts ?? 0, 0)) : kind === 'check' ? t.check(otherLabel ?? '') : t[kind];
  const left = before > 0 ? after / before : 1;
  const buys =
    left < MOST_GONE
      ? t.mostGone
      : left < MORE_THAN_HALF
        ? t.moreThanHalf
        : left < HALVED
          ? t.halves
          : left < THIRD_OFF
            ? t.third
            : left < QUARTER_OFF
              ? t.quarter
              : t.some(num(100 * (1 - left), 0));
  const digits = before - after < 0.15 ? 2 : 1;
  return t.whole(what, buys, t.ranges[range], num(before, digits), num(after, digits));
}
