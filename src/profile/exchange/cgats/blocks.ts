import { type Assumption, ExchangeProblem, FILE_LIMITS, type ReadChoices } from '../spectral-table.ts';
import { type Token, cgatsTokens } from './tokens.ts';
import { say } from '../sentences.ts';

/** One table of a CGATS file: header words, field names and rows of cells, all as text. */
export interface Block {
  readonly header: Readonly<Record<string, string>>;
  readonly fields: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Splits a file into its tables and recomputes the counts it states. */
export function cgatsBlocks(text: string, choices: ReadChoices, assumptions: Assumption[]): Block[] {
  const tokens = cgatsTokens(text);
  const blocks: Block[] = [];
  let header: Record<string, string> = {};
  let fields: string[] | undefined;
  let at = 0;
  const word = (): string => tokens[at]!.text.toUpperCase();
  while (at < tokens.length) {
    if (word() === 'BEGIN_DATA_FORMAT') {
      const start = ++at;
      at = seek(tokens, at, 'END_DATA_FORMAT');
      fields = tokens.slice(start, at++).map((t) => t.text);
      if (fields.length === 0 || fields.length > FILE_LIMITS.columns) {
        throw new ExchangeProblem(say('columns', { count: fields.length, most: FILE_LIMITS.columns }));
      }
      compare('NUMBER_OF_FIELDS', header['NUMBER_OF_FIELDS'], fields.length, assumptions);
    } else if (word() === 'BEGIN_DATA') {
      if (!fields) throw new ExchangeProblem(say('data-first', { line: tokens[at]!.line }));
      const start = ++at;
      at = seek(tokens, at, 'END_DATA');
      const rows = rowsFrom(tokens.slice(start, at++), fields.length, choices, assumptions);
      compare('NUMBER_OF_SETS', header['NUMBER_OF_SETS'], rows.length, assumptions);
      const { NUMBER_OF_SETS: _sets, NUMBER_OF_FIELDS: _fields, ...facts } = header;
      blocks.push({ header: facts, fields, rows });
      header = {};
      fields = undefined;
    } else {
      at = headerLine(tokens, at, header);
    }
  }
  if (blocks.length === 0) {
    throw new ExchangeProblem(say('no-begin-data'));
  }
  return blocks;
}

function seek(tokens: readonly Token[], from: number, word: string): number {
  for (let i = from; i < tokens.length; i++)
    if (!tokens[i]!.quoted && tokens[i]!.text.toUpperCase() === word) return i;
  throw new ExchangeProblem(say('cut-off', { word, line: tokens[tokens.length - 1]?.line ?? 1 }));
}

/** A keyword with its value on the same line; an identifier or stray word stands alone and is passed over. */
function headerLine(tokens: readonly Token[], at: number, header: Record<string, string>): number {
  const key = tokens[at]!;
  const rest: Token[] = [];
  let next = at + 1;
  while (next < tokens.length && tokens[next]!.line === key.line) rest.push(tokens[next++]!);
  if (rest.length > 0 && key.text.toUpperCase() !== 'KEYWORD')
    header[key.text.toUpperCase()] = rest.map((t) => t.text).join(' ');
  return next;
}

function compare(name: string, stated: string | undefined, found: number, assumptions: Assumption[]): void {
  if (stated !== undefined && Number(stated) !== found) {
    assumptions.push({
      choice: 'none',
      sentence: say('stated-count', { name, stated: stated.slice(0, 20), found }),
    });
  }
}

function rowsFrom(
  tokens: readonly Token[],
  width: number,
  choices: ReadChoices,
  assumptions: Assumption[],
): string[][] {
  const bare = tokens.filter((t) => !t.quoted).map((t) => t.text);
  const commas = bare.filter((t) => /^-?\d+,\d+$/.test(t)).length;
  if (commas > 0 && choices.decimalComma === undefined) {
    const dots = bare.some((t) => /\d\.\d/.test(t));
    throw new ExchangeProblem(dots ? say('mixed-signs') : say('commas'), 'decimalComma');
  }
  const byLine = groupByLine(tokens);
  const lines = [...byLine.values()];
  const rows =
    tokens.length % width === 0
      ? Array.from({ length: tokens.length / width }, (_, r) =>
          tokens.slice(r * width, (r + 1) * width).map((t) => t.text),
        )
      : lines.map((line) => joinNames(line, width, assumptions));
  if (rows.length > FILE_LIMITS.rows) {
    throw new ExchangeProblem(say('rows', { rows: rows.length, most: FILE_LIMITS.rows }));
  }
  return rows;
}

function groupByLine(tokens: readonly Token[]): Map<number, Token[]> {
  const lines = new Map<number, Token[]>();
  for (const t of tokens) {
    const line = lines.get(t.line);
    if (line) line.push(t);
    else lines.set(t.line, [t]);
  }
  return lines;
}

/** A line with more cells than columns has an unquoted name with spaces: its middle words are joined. */
function joinNames(line: readonly Token[], width: number, assumptions: Assumption[]): string[] {
  const cells = line.map((t) => t.text);
  if (cells.length === width) return cells;
  const numbersFrom = cells.findLastIndex((c) => !Number.isFinite(Number(c.replace(',', '.'))));
  const extra = cells.length - width;
  if (extra < 0 || numbersFrom < 1 + extra - 1) {
    throw new ExchangeProblem(
      say('line-values', { line: line[0]!.line, count: cells.length, wanted: width }),
    );
  }
  const name = cells.slice(numbersFrom - extra, numbersFrom + 1).join(' ');
  assumptions.push({
    choice: 'none',
    sentence: say('unquoted', { line: line[0]!.line, name }),
  });
  return [...cells.slice(0, numbersFrom - extra), name, ...cells.slice(numbersFrom + 1)];
}
