import { existsSync } from 'node:fs';
import { compareProfiles } from '../../src/profile/compare/compare-profiles.ts';
import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { notHeldByTables, tableFromProfile } from '../../src/profile/exchange/constants-table.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import { writeCxf } from '../../src/profile/exchange/cxf/write.ts';
import { notHeldFromSwatchSet, tableFromSwatchSet } from '../../src/profile/exchange/readings-table.ts';
import type { SpectralTable, Written } from '../../src/profile/exchange/spectral-table.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { bridgeFrom } from './bridge.ts';
import { openAny, openAsTable, readProfileFile } from '../input.ts';
import { type Output, printJson, table, writeOut } from '../output.ts';
import { CommandProblem } from '../problem.ts';
import type { CompareOptions, ConvertOptions, FORMATS } from '../verbs/exchange.ts';

type Format = (typeof FORMATS)[number];
const ENDINGS: Readonly<Record<string, Format>> = {
  json: 'json',
  csv: 'csv',
  txt: 'cgats',
  cgats: 'cgats',
  it8: 'cgats',
  cxf: 'cxf',
  xml: 'cxf',
};

export function runConvert(file: string, options: ConvertOptions, output: Output): void {
  const format = options.format ?? ENDINGS[/\.([a-z0-9]+)$/i.exec(options.output)?.[1]?.toLowerCase() ?? ''];
  if (!format) {
    throw new CommandProblem(
      `${options.output} does not tell the format; end it in .json, .csv, .txt or .cxf, or say --format.`,
      2,
    );
  }
  const { scale, decimalComma, geometry } = options;
  const assume = {
    ...(scale ? { scale } : {}),
    ...(decimalComma === undefined ? {} : { decimalComma }),
    ...(geometry ? { geometry } : {}),
  };
  // Readings of another program need not say what was painted to go from one table into another.
  const asTable = format === 'json' || file === '-' ? undefined : openAsTable(file, assume);
  if (asTable) {
    for (const { sentence } of asTable.assumptions) output.err(`Assumed: ${sentence}`);
    return writeTable(asTable, [], format, options, output);
  }
  const opened = openAny(file, assume);
  if (opened.kind === 'swatch set') {
    for (const { sentence } of opened.answered) output.err(`Assumed: ${sentence}`);
    if (format !== 'json') {
      const lost = notHeldFromSwatchSet(opened.set);
      return writeTable(tableFromSwatchSet(opened.set), lost, format, options, output);
    }
    return writeOut(options.output, `${JSON.stringify(opened.set, null, 2)}\n`, output);
  }
  if (format === 'json') return writeOut(options.output, writeProfile(opened.profile), output);
  const lost = notHeldByTables(opened.profile);
  return writeTable(tableFromProfile(opened.profile), lost, format, options, output);
}

function writeTable(
  rows: SpectralTable,
  lost: readonly string[],
  format: Format,
  options: ConvertOptions,
  output: Output,
): void {
  if (format === 'cxf' && rows.rows.some((r) => r.quantity !== 'reflectance')) {
    throw new CommandProblem(
      'CxF3 holds readings, not constants; convert the profile to JSON, CSV or CGATS.17.',
    );
  }
  const written: Written & { readonly sidecar?: string } =
    format === 'csv'
      ? writeCsv(rows)
      : format === 'cgats'
        ? writeCgats(rows)
        : writeCxf(rows, new Date().toISOString());
  const { text, notHeld, sidecar } = written;
  writeOut(options.output, text, output);
  if (sidecar !== undefined && options.output.toLowerCase().endsWith('.csv')) {
    const beside = options.output.replace(/\.csv$/i, '.json');
    if (existsSync(beside))
      throw new CommandProblem(`${beside} is there already and belongs beside the CSV; choose another name.`);
    writeOut(beside, sidecar, output);
    output.err(`Keep ${beside} beside the CSV: it holds what rows cannot.`);
  }
  for (const sentence of new Set([...lost, ...notHeld])) output.err(`Not carried over: ${sentence}`);
}

export function runCompare(first: string, second: string, options: CompareOptions, output: Output): void {
  const pairs = (options.pair ?? []).map((text) => {
    const [older, newer, ...more] = text.split('=');
    if (!older || !newer || more.length > 0) {
      throw new CommandProblem(`"${text}" is no pair; write old=new with the ids of the two tubes.`, 2);
    }
    return { older, newer };
  });
  const [older, newer] = [readProfileFile(first), readProfileFile(second)];
  const bridge = options.bridge && bridgeFrom(options.bridge, older, newer, options.secondWhite);
  const found = compareProfiles(older, newer, pairs, bridge || undefined);
  const bare = (id: string): string => id.slice(id.indexOf('/') + 1);
  const tubes = found.tubes.map((t) => ({ ...t, olderId: bare(t.olderId), newerId: bare(t.newerId) }));
  if (options.json) return printJson(output, { tubes, gone: found.gone, added: found.added });
  const colour = (t: (typeof tubes)[number], of: string): string =>
    t.colours.find((c) => c.of === of)?.deltaE00.toFixed(2) ?? '-';
  const rows = tubes.map((t) => [
    t.olderId === t.newerId ? t.olderId : `${t.olderId} to ${t.newerId}`,
    colour(t, 'masstone'),
    colour(t, '1:4'),
    colour(t, 'undertone'),
    `${t.strengthPercent.value.toFixed(0)} %`,
    t.words.join(' '),
  ]);
  output.out(
    [
      table(['tube', 'masstone', '1:4', 'undertone', 'strength', 'in words'], rows),
      ...found.gone.map((id) => `Gone: ${id}`),
      ...found.added.map((id) => `New: ${id}`),
    ].join('\n'),
  );
}
