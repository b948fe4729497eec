import {
  betweenRequestSchema,
  highlightsRequestSchema,
  nudgesRequestSchema,
  oneMoreRequestSchema,
  reachRequestSchema,
  wholePartsRequestSchema,
} from '../../server/api/mix-advice.ts';
import { type Output, printJson, table } from '../output.ts';
import type {
  BetweenOptions,
  HighlightsOptions,
  MoreOptions,
  NudgeOptions,
  PartsOptions,
  ReachOptions,
} from '../verbs/advice.ts';
import { Rack } from '../rack.ts';
import { adviceOf, madeOf, scaleFrom, search, targetOf, viewing } from './mix.ts';

const signed = (v: number, digits: number): string => `${v > 0 ? '+' : ''}${v.toFixed(digits)}`;

export function runNudge(file: string, options: NudgeOptions, output: Output): void {
  const rack = new Rack(file);
  const only = options.only?.map(rack.id);
  const masses = rack.masses(options.masses);
  const request = nudgesRequestSchema.parse({ white: viewing(options), masses, only });
  const { nudges } = search(rack, { kind: 'nudges', request });
  if (options.json) return printJson(output, { nudges });
  const missing = request.nudges.filter((n) => !nudges.some((found) => found.nudge === n));
  const rows = nudges.map((n) => [
    n.nudge,
    rack.grams(n.add),
    n.moved.toFixed(2),
    signed(n.value, 2),
    signed(n.lean, 1),
    signed(n.chroma, 1),
  ]);
  output.out(
    [
      ...(rows.length > 0 ? [table(['step', 'add', 'CIEDE2000', 'value', 'lean', 'chroma'], rows)] : []),
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
  const rack = new Rack(file);
  const request = betweenRequestSchema.parse({
    white: viewing(options),
    one: rack.id(one),
    two: rack.id(two),
    points,
  });
  const found = search(rack, { kind: 'between', request });
  if (options.json) return printJson(output, found);
  const rows = found.points.map((p) => [
    `${(100 * p.share).toFixed(1)} %`,
    p.chroma.toFixed(1),
    p.value.toFixed(2),
    p.lean.toFixed(1),
  ]);
  output.out(
    [found.sentence, '', table([rack.label(request.one), 'chroma', 'value', 'lean'], rows)].join('\n'),
  );
}

export function runParts(file: string, options: PartsOptions, output: Output): void {
  const rack = new Rack(file);
  const request = wholePartsRequestSchema.parse({
    white: viewing(options),
    target: targetOf(options),
    masses: rack.masses(options.masses),
    mostParts: options.most,
    basis: options.volume ? 'volume' : 'mass',
    priority: options.priority,
  });
  const { recipes } = search(rack, { kind: 'whole parts', request });
  if (options.json) return printJson(output, { recipes });
  const rows = recipes.map((r) => [
    Object.entries(r.parts)
      .map(([id, k]) => `${k} ${rack.label(id)}`)
      .join(' : '),
    String(r.total),
    r.deltaE00.toFixed(2),
  ]);
  output.out(table([`parts by ${request.basis}`, 'in all', 'CIEDE2000'], rows));
}

export function runHighlights(file: string, options: HighlightsOptions, output: Output): void {
  const { warmth, grams } = options;
  const rack = new Rack(file);
  const white = viewing(options);
  const only = options.only?.map(rack.id);
  const request = highlightsRequestSchema.parse({ white, only, warmth, grams, scale: scaleFrom(options) });
  const { highlights } = search(rack, { kind: 'highlights', request });
  if (options.json) return printJson(output, { highlights });
  const rows = highlights.map((h) => [
    rack.label(h.warm),
    madeOf(rack, h.masses, h.pour),
    h.prediction.colour.value.toFixed(2),
    h.valueLost.toFixed(2),
    h.prediction.interval.radius95.toFixed(2),
  ]);
  const advice = highlights.flatMap((h) =>
    h.pour ? adviceOf(rack, h.pour).map((said) => `${rack.label(h.warm)}: ${said}`) : [],
  );
  output.out([table(['warm', 'recipe', 'value', 'lost', 'within'], rows), ...advice].join('\n'));
}

export function runMore(file: string, options: MoreOptions, output: Output): void {
  const rack = new Rack(file);
  const request = oneMoreRequestSchema.parse({
    white: viewing(options),
    chosen: options.chosen.map(rack.id),
  });
  const found = search(rack, { kind: 'one more', request });
  if (options.json) return printJson(output, found);
  const rows = found.gains.map((g) => [
    rack.label(g.tube),
    g.volume.toFixed(0),
    g.gain === null ? '-' : `${(100 * g.gain).toFixed(1)} %`,
  ]);
  output.out(table(['one more tube', 'reached, CIELAB units cubed', 'more'], rows));
}

export function runReach(file: string, options: ReachOptions, output: Output): void {
  const { within } = options;
  const rack = new Rack(file);
  const request = reachRequestSchema.parse({
    white: viewing(options),
    only: options.only?.map(rack.id),
    target: targetOf(options),
    within,
  });
  const found = search(rack, { kind: 'reach', request });
  if (options.json) return printJson(output, found);
  output.out(
    [
      found.inside
        ? `Inside: some mix comes within ${found.deltaE00.toFixed(3)} CIEDE2000.`
        : `Outside: the nearest mix is off by ${found.deltaE00.toFixed(2)} CIEDE2000, ${found.split.sentence}.`,
      `Nearest, by mass: ${rack.shares(found.shares)}.`,
    ].join('\n'),
  );
}
