import {
  betweenRequestSchema,
  highlightsRequestSchema,
  nudgesRequestSchema,
  oneMoreRequestSchema,
  reachRequestSchema,
  wholePartsRequestSchema,
} from '../../server/api/mix-advice.ts';
import { parseMasses } from '../input.ts';
import { type Output, printJson, table } from '../output.ts';
import type {
  BetweenOptions,
  HighlightsOptions,
  MoreOptions,
  NudgeOptions,
  PartsOptions,
  ReachOptions,
} from '../verbs/advice.ts';
import { adviceOf, massesWords, scaleFrom, search, targetOf, viewing } from './mix.ts';

const signed = (v: number, digits: number): string => `${v > 0 ? '+' : ''}${v.toFixed(digits)}`;

export function runNudge(file: string, options: NudgeOptions, output: Output): void {
  const { only } = options;
  const masses = parseMasses(options.masses);
  const request = nudgesRequestSchema.parse({ white: viewing(options), masses, only });
  const { nudges } = search(file, { kind: 'nudges', request });
  if (options.json) return printJson(output, { nudges });
  const missing = request.nudges.filter((n) => !nudges.some((found) => found.nudge === n));
  const rows = nudges.map((n) => [
    n.nudge,
    massesWords(n.add),
    n.moved.toFixed(2),
    signed(n.value, 2),
    signed(n.lean, 1),
    signed(n.chroma, 1),
  ]);
  output.out(
    [
      ...(rows.length > 0
        ? [table(['step', 'add, grams', 'CIEDE2000', 'value', 'lean', 'chroma'], rows)]
        : []),
      ...(missing.length > 0 ? [`No addition of these tubes makes it ${missing.join(' or ')}.`] : []),
    ].join('\n'),
  );
}

export function runBetween(
  file: string,
  one: string,
  two: string,
  options: BetweenOptions,
  output: Output,
): void {
  const { points } = options;
  const request = betweenRequestSchema.parse({ white: viewing(options), one, two, points });
  const found = search(file, { kind: 'between', request });
  if (options.json) return printJson(output, found);
  const rows = found.points.map((p) => [
    `${(100 * p.share).toFixed(1)} %`,
    p.chroma.toFixed(1),
    p.value.toFixed(2),
    p.lean.toFixed(1),
  ]);
  output.out([found.sentence, '', table([one, 'chroma', 'value', 'lean'], rows)].join('\n'));
}

export function runParts(file: string, options: PartsOptions, output: Output): void {
  const request = wholePartsRequestSchema.parse({
    white: viewing(options),
    target: targetOf(options),
    masses: parseMasses(options.masses),
    mostParts: options.most,
    basis: options.volume ? 'volume' : 'mass',
    priority: options.priority,
  });
  const { recipes } = search(file, { kind: 'whole parts', request });
  if (options.json) return printJson(output, { recipes });
  const rows = recipes.map((r) => [
    Object.entries(r.parts)
      .map(([id, k]) => `${k} ${id}`)
      .join(' : '),
    String(r.total),
    r.deltaE00.toFixed(2),
  ]);
  output.out(table([`parts by ${request.basis}`, 'in all', 'CIEDE2000'], rows));
}

export function runHighlights(file: string, options: HighlightsOptions, output: Output): void {
  const { warmth, grams } = options;
  const white = viewing(options);
  const request = highlightsRequestSchema.parse({ white, warmth, grams, scale: scaleFrom(options) });
  const { highlights } = search(file, { kind: 'highlights', request });
  if (options.json) return printJson(output, { highlights });
  const rows = highlights.map((h) => [
    h.warm,
    massesWords(h.pour?.masses ?? h.masses),
    h.prediction.colour.value.toFixed(2),
    h.valueLost.toFixed(2),
    h.prediction.interval.radius95.toFixed(2),
  ]);
  const advice = highlights.flatMap((h) =>
    h.pour ? adviceOf(h.pour).map((said) => `${h.warm}: ${said}`) : [],
  );
  output.out([table(['warm', 'grams', 'value', 'lost', 'within'], rows), ...advice].join('\n'));
}

export function runMore(file: string, options: MoreOptions, output: Output): void {
  const request = oneMoreRequestSchema.parse({ white: viewing(options), chosen: options.chosen });
  const found = search(file, { kind: 'one more', request });
  if (options.json) return printJson(output, found);
  const rows = found.gains.map((g) => [
    g.tube,
    g.volume.toFixed(0),
    g.gain === null ? '-' : `${(100 * g.gain).toFixed(1)} %`,
  ]);
  output.out(table(['one more tube', 'reached, CIELAB units cubed', 'more'], rows));
}

export function runReach(file: string, options: ReachOptions, output: Output): void {
  const { within } = options;
  const request = reachRequestSchema.parse({ white: viewing(options), target: targetOf(options), within });
  const found = search(file, { kind: 'reach', request });
  if (options.json) return printJson(output, found);
  output.out(
    [
      found.inside
        ? `Inside: some mix comes within ${found.deltaE00.toFixed(3)} CIEDE2000.`
        : `Outside: the nearest mix is off by ${found.deltaE00.toFixed(2)} CIEDE2000, ${found.split.sentence}.`,
      `Nearest, shares by mass: ${massesWords(found.shares)}`,
    ].join('\n'),
  );
}
