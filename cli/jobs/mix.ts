import {
  additionRequestSchema,
  limitsRequestSchema,
  matchRequestSchema,
  type RecipeAnswer,
  valueStringRequestSchema,
} from '../../server/api/mix.ts';
import type { PourAnswer, WantedRequest } from '../../server/api/mix-words.ts';
import { type MixAnswers, type MixJob, runMix } from '../../server/mixing/run-mix.ts';
import { readText, whiteOf } from '../input.ts';
import { type Output, printJson, table } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import { Rack, gramsWords } from '../rack.ts';
import type { AddOptions, LimitsOptions, MatchOptions, StringOptions, TargetOptions } from '../verbs/mix.ts';
import type { WhiteOptions } from '../verbs/white-options.ts';
import { whiteParts } from '../../src/colour/illuminant.ts';

export function runMatch(file: string, options: MatchOptions, output: Output): void {
  const { maxTubes, count, priority, grams, scale, smallestPour, closeEnough } = options;
  const rack = new Rack(file);
  const request = matchRequestSchema.parse({
    target: targetOf(options),
    white: viewing(options),
    maxTubes,
    count,
    priority,
    grams,
    only: options.only?.map(rack.id),
    without: options.without?.map(rack.id),
    scaleResolution: scale,
    smallestPour,
    closeEnough,
    prices: options.prices === undefined ? undefined : rack.masses(options.prices),
  });
  const found = search(rack, { kind: 'match', request });
  if (options.json) return printJson(output, found);
  const rows = found.recipes.map((r: RecipeAnswer) => [
    madeWords(rack, r),
    r.deltaE00.toFixed(2),
    r.prediction.colour.value.toFixed(2),
    r.slip ? r.slip.deltaE00.toFixed(2) : '-',
    r.split.sentence,
  ]);
  output.out(
    [
      found.sentence,
      '',
      table(['recipe', 'CIEDE2000', 'value', 'slip', 'against wanted'], rows),
      ...found.recipes.flatMap((r, i) => (r.pour ? ['', `${i + 1}. ${pourWords(rack, r.pour)}`] : [])),
    ].join('\n'),
  );
}

export function runAdd(file: string, options: AddOptions, output: Output): void {
  const { maxTubes, maxGrams, priority, need } = options;
  const rack = new Rack(file);
  const request = additionRequestSchema.parse({
    target: targetOf(options),
    white: viewing(options),
    pile: options.pile === undefined ? undefined : rack.masses(options.pile),
    reading: options.reading === undefined ? undefined : { Lab: labOf(options.reading, '--reading') },
    pileGrams: options.pileGrams,
    pileTubes: options.pileTubes?.map(rack.id),
    only: options.only?.map(rack.id),
    maxTubes,
    maxGrams,
    wantedGrams: need,
    priority,
    scale: scaleFrom(options),
  });
  const found = search(rack, { kind: 'addition', request });
  if (options.json) return printJson(output, found);
  const rows = found.additions.map((a) => [
    rack.grams(a.add),
    gramsWords(a.grams),
    a.deltaE00.toFixed(2),
    a.split.sentence,
  ]);
  const { pile, afresh } = found;
  output.out(
    [
      ...(pile.estimated
        ? [`By its reading the pile holds ${rack.grams(pile.masses)} (CIEDE2000 ${pile.misfit!.toFixed(2)}).`]
        : []),
      found.sentence,
      ...(rows.length > 0 ? ['', table(['add', 'in all', 'CIEDE2000', 'against wanted'], rows)] : []),
      '',
      `Afresh: ${[rack.grams(afresh.masses), ...afresh.preTints.map((t) => tintWords(rack, t))].join(', ')} (CIEDE2000 ${afresh.deltaE00.toFixed(2)}).`,
    ].join('\n'),
  );
}

export function runLimits(file: string, options: LimitsOptions, output: Output): void {
  const rack = new Rack(file);
  const request = limitsRequestSchema.parse({
    white: viewing(options),
    only: options.only?.map(rack.id),
    hues: options.hues,
  });
  const found = search(rack, { kind: 'limits', request });
  if (options.json) return printJson(output, found);
  const row = (name: string, mix: typeof found.darkest): string[] => [
    name,
    mix.value.toFixed(2),
    mix.lean.toFixed(1),
    mix.chroma.toFixed(1),
    rack.shares(mix.shares),
  ];
  output.out(
    table(
      ['limit', 'value', 'lean', 'chroma', 'by mass'],
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
  const rack = new Rack(file);
  const kind =
    options.tube !== undefined
      ? { tube: rack.id(options.tube) }
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
    only: options.only?.map(rack.id),
    steps,
    grams,
    kind,
    darkest: from,
    lightest: to,
    scale: scaleFrom(options),
  });
  const found = search(rack, { kind: 'value string', request });
  if (options.json) return printJson(output, found);
  const rows = found.steps.map((s) => [
    s.value.toFixed(2),
    s.prediction ? s.prediction.colour.lean.toFixed(1) : '-',
    s.prediction ? s.prediction.interval.radius95.toFixed(2) : '-',
    s.masses ? madeOf(rack, s.masses, s.pour) : 'not with these tubes',
  ]);
  const pours = found.steps.flatMap((s) => {
    const said = s.pour ? adviceOf(rack, s.pour) : [];
    return said.length > 0 ? [`value ${s.value.toFixed(2)}: ${said.join(' ')}`] : [];
  });
  output.out(
    [
      table(['value', 'lean', 'within', 'recipe'], rows),
      ...pours,
      ...found.warnings.map((w) => `Warning: ${w}`),
    ].join('\n'),
  );
}

export function search<K extends MixJob['kind']>(rack: Rack, job: MixJob & { kind: K }): MixAnswers[K] {
  return runMix(rack.profile, job) as MixAnswers[K];
}

/** A scale as the options name it. */
export function scaleFrom({ scale, smallestPour }: { scale?: number; smallestPour?: number }) {
  return scale === undefined ? undefined : { resolution: scale, smallestPour };
}

/** What has to be said of a pour besides its grams: what is let down first, and what no pre-tint helps. */
export function adviceOf(rack: Rack, { preTint, noPreTint }: PourAnswer): string[] {
  if (!preTint) return [...noPreTint];
  const { tints, masses, deltaE00 } = preTint;
  const first = tints.map(({ strong, light, make }) => {
    const weigh = (id: string): string => `${gramsWords(make[id]!)} ${rack.label(id)}`;
    return `${weigh(strong)} with ${weigh(light)}`;
  });
  return [
    `Better with ${tints.length === 1 ? 'a pre-tint' : 'pre-tints'}: mix ${first.join(', and ')} first, then pour ` +
      `${[rack.grams(masses), ...tints.map((t) => tintWords(rack, t))].join(', ')} (CIEDE2000 ${deltaE00.toFixed(2)}).`,
    ...noPreTint,
  ];
}

type PreTints = NonNullable<PourAnswer['preTint']>['tints'];

/** "0.40 g pre-tint (1 blue : 9 white)" */
function tintWords(rack: Rack, { strong, light, parts, pour }: PreTints[number]): string {
  return `${gramsWords(pour)} pre-tint (1 ${rack.label(strong)} : ${parts} ${rack.label(light)})`;
}

/** A recipe as it is made: exact, as poured, or with its pre-tints. */
export function madeOf(
  rack: Rack,
  masses: Readonly<Record<string, number>>,
  pour: PourAnswer | null,
): string {
  const tint = pour?.preTint;
  if (!tint) return rack.grams(pour?.masses ?? masses);
  return [rack.grams(tint.masses), ...tint.tints.map((t) => tintWords(rack, t))].join(', ');
}

const madeWords = (rack: Rack, { masses, pour }: RecipeAnswer): string => madeOf(rack, masses, pour);

/** Dark into light, and what has to be said besides. */
function pourWords(rack: Rack, pour: PourAnswer): string {
  const steps = pour.order.map(({ tube, grams, how }) => {
    const said = `${gramsWords(grams)} ${rack.label(tube)}`;
    return how === 'start'
      ? `start with ${said}`
      : how === 'add'
        ? `add ${said}`
        : `add ${said} in small steps`;
  });
  const plainly = `As poured (CIEDE2000 ${pour.deltaE00.toFixed(2)}): ${steps.join(', ')}.`;
  return [plainly, ...adviceOf(rack, pour)].join(' ');
}

export function viewing(options: WhiteOptions) {
  return whiteParts(whiteOf(options));
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
