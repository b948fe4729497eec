import {
  additionRequestSchema,
  limitsRequestSchema,
  matchRequestSchema,
  type RecipeAnswer,
  valueStringRequestSchema,
} from '../../server/api/mix.ts';
import type { PourAnswer, WantedRequest } from '../../server/api/mix-words.ts';
import { type MixAnswers, type MixJob, runMix } from '../../server/mixing/run-mix.ts';
import { parseMasses, readProfileFile, readText, whiteOf } from '../input.ts';
import { type Output, printJson, table } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import type { AddOptions, LimitsOptions, MatchOptions, StringOptions, TargetOptions } from '../verbs/mix.ts';
import type { WhiteOptions } from '../verbs/white-options.ts';
import { whiteParts } from '../../src/colour/illuminant.ts';

export function runMatch(file: string, options: MatchOptions, output: Output): void {
  const { maxTubes, count, priority, grams, without, scale, smallestPour, closeEnough } = options;
  const request = matchRequestSchema.parse({
    target: targetOf(options),
    white: viewing(options),
    maxTubes,
    count,
    priority,
    grams,
    without,
    scaleResolution: scale,
    smallestPour,
    closeEnough,
    prices: options.prices === undefined ? undefined : parseMasses(options.prices),
  });
  const found = search(file, { kind: 'match', request });
  if (options.json) return printJson(output, found);
  const rows = found.recipes.map((r: RecipeAnswer) => [
    madeWords(r),
    r.deltaE00.toFixed(2),
    r.prediction.colour.value.toFixed(2),
    r.slip ? r.slip.deltaE00.toFixed(2) : '-',
    r.split.sentence,
  ]);
  output.out(
    [
      found.sentence,
      '',
      table(['grams', 'CIEDE2000', 'value', 'slip', 'against wanted'], rows),
      ...found.recipes.flatMap((r, i) => (r.pour ? ['', `${i + 1}. ${pourWords(r.pour)}`] : [])),
    ].join('\n'),
  );
}

export function runAdd(file: string, options: AddOptions, output: Output): void {
  const { maxTubes, maxGrams, priority, need } = options;
  const request = additionRequestSchema.parse({
    target: targetOf(options),
    white: viewing(options),
    pile: parseMasses(options.pile),
    reading: options.reading === undefined ? undefined : { Lab: labOf(options.reading, '--reading') },
    maxTubes,
    maxGrams,
    wantedGrams: need,
    priority,
  });
  const found = search(file, { kind: 'addition', request });
  if (options.json) return printJson(output, found);
  const rows = found.additions.map((a) => [
    massesWords(a.add),
    a.grams.toFixed(2),
    a.deltaE00.toFixed(2),
    a.split.sentence,
  ]);
  output.out(
    [found.sentence, '', table(['add, grams', 'in all', 'CIEDE2000', 'against wanted'], rows)].join('\n'),
  );
}

export function runLimits(file: string, options: LimitsOptions, output: Output): void {
  const request = limitsRequestSchema.parse({ white: viewing(options), hues: options.hues });
  const found = search(file, { kind: 'limits', request });
  if (options.json) return printJson(output, found);
  const row = (name: string, mix: typeof found.darkest): string[] => [
    name,
    mix.value.toFixed(2),
    mix.lean.toFixed(1),
    mix.chroma.toFixed(1),
    massesWords(mix.shares),
  ];
  output.out(
    table(
      ['limit', 'value', 'lean', 'chroma', 'parts by mass'],
      [
        row('darkest', found.darkest),
        row('lightest', found.lightest),
        ...found.neutrals.map((n) => row(`neutral ${n.wantedValue}`, n)),
        ...found.strongest.map((s) => row(`strongest at hue ${s.wantedHue.toFixed(0)}`, s)),
      ],
    ),
  );
}

export function runString(file: string, options: StringOptions, output: Output): void {
  if (options.lean !== undefined && options.tube !== undefined) {
    throw new CommandProblem(
      'A string keeps a lean or follows one tube, not both; give --lean or --tube.',
      2,
    );
  }
  const kind =
    options.tube !== undefined
      ? { tube: options.tube }
      : options.lean !== undefined
        ? { lean: options.lean }
        : 'neutral';
  const { steps, grams, from, to } = options;
  for (const end of [from, to]) {
    if (end !== undefined && !(end >= 0 && end <= 10)) {
      throw new CommandProblem(`Value ${end} is not on the scale; Munsell values run from 0 to 10.`, 2);
    }
  }
  const request = valueStringRequestSchema.parse({
    white: viewing(options),
    steps,
    grams,
    kind,
    darkest: from,
    lightest: to,
    scale: scaleFrom(options),
  });
  const found = search(file, { kind: 'value string', request });
  if (options.json) return printJson(output, found);
  const rows = found.steps.map((s) => [
    s.value.toFixed(2),
    s.prediction ? s.prediction.colour.lean.toFixed(1) : '-',
    s.prediction ? s.prediction.interval.radius95.toFixed(2) : '-',
    s.masses ? massesWords(s.pour?.masses ?? s.masses) : 'not with these tubes',
  ]);
  const pours = found.steps.flatMap((s) => {
    const said = s.pour ? adviceOf(s.pour) : [];
    return said.length > 0 ? [`value ${s.value.toFixed(2)}: ${said.join(' ')}`] : [];
  });
  output.out(
    [
      table(['value', 'lean', 'within', 'grams'], rows),
      ...pours,
      ...found.warnings.map((w) => `Warning: ${w}`),
    ].join('\n'),
  );
}

export function search<K extends MixJob['kind']>(file: string, job: MixJob & { kind: K }): MixAnswers[K] {
  return runMix(readProfileFile(file), job) as MixAnswers[K];
}

/** A scale as the options name it. */
export function scaleFrom({ scale, smallestPour }: { scale?: number; smallestPour?: number }) {
  return scale === undefined ? undefined : { resolution: scale, smallestPour };
}

/** What has to be said of a pour besides its grams. */
export function adviceOf({ leftOut, preTint }: PourAnswer): string[] {
  const out: string[] = [];
  if (leftOut.length > 0) out.push(`Left out, under the smallest pour: ${leftOut.join(', ')}.`);
  if (preTint) {
    out.push(
      `Better with a pre-tint: mix ${massesWords(preTint.make)} first, then pour ${grams(preTint.pour)} of it with ` +
        `${massesWords(preTint.masses)} (CIEDE2000 ${preTint.deltaE00.toFixed(2)}).`,
    );
  }
  return out;
}

function madeWords({ masses, pour, made }: RecipeAnswer): string {
  const tint = made === 'with a pre-tint' ? pour?.preTint : undefined;
  if (!tint) return massesWords(masses);
  const { strong, light, parts } = tint;
  return `${massesWords(tint.masses)}, pre-tint (1 ${strong} : ${parts} ${light}) ${grams(tint.pour)}`;
}

/** Dark into light, and what has to be said besides. */
function pourWords(pour: PourAnswer): string {
  const steps = pour.order.map(({ tube, grams: g, how }) => {
    const said = `${tube} ${grams(g)}`;
    return how === 'start'
      ? `start with ${said}`
      : how === 'add'
        ? `add ${said}`
        : `add ${said} in small steps`;
  });
  const plainly = `As poured (CIEDE2000 ${pour.deltaE00.toFixed(2)}): ${steps.join(', ')}.`;
  return [plainly, ...adviceOf(pour)].join(' ');
}

const grams = (g: number): string => `${g >= 0.1 ? g.toFixed(2) : g.toPrecision(2)} g`;

export function viewing(options: WhiteOptions) {
  return whiteParts(whiteOf(options));
}

export function massesWords(masses: Readonly<Record<string, number>>): string {
  return Object.entries(masses)
    .toSorted((a, b) => b[1] - a[1])
    .map(([id, grams]) => `${id} ${grams >= 0.1 ? grams.toFixed(2) : grams.toPrecision(2)}`)
    .join(', ');
}

export function targetOf(options: TargetOptions): WantedRequest {
  if ((options.lab === undefined) === (options.reflectance === undefined)) {
    throw new CommandProblem('Name the wanted colour by --lab or by --reflectance, one of the two.', 2);
  }
  if (options.lab !== undefined) return { Lab: labOf(options.lab, '--lab') };
  return { reflectance: spectrumIn(options.reflectance!) };
}

/** 36 reflectance factors in a JSON list. @throws CommandProblem */
export function spectrumIn(file: string): number[] {
  let values: unknown;
  try {
    values = JSON.parse(readText(file));
  } catch (error) {
    if (error instanceof CommandProblem) throw error;
    throw new CommandProblem(`${file} is not JSON; give a list of 36 reflectance factors.`);
  }
  if (!Array.isArray(values) || values.length !== 36 || !values.every((v) => typeof v === 'number')) {
    throw new CommandProblem(
      `${file} is no list of 36 numbers; give reflectance from 380 to 730 nm in 10 nm steps.`,
    );
  }
  return values as number[];
}

function labOf(text: string, option: string): { L: number; a: number; b: number } {
  const numbers = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (numbers.length !== 3 || !numbers.every(Number.isFinite)) {
    throw new CommandProblem(
      `${option} is "${text}"; give three numbers with commas, such as '48,12,-20'.`,
      2,
    );
  }
  const [L, a, b] = numbers as [number, number, number];
  return { L, a, b };
}
