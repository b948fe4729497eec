/**
 * Tolerant reading of CSV: comma, semicolon or tab; byte-order mark; leading # lines; decimal comma where the
 * separator is a semicolon; wide (one row a sample), long (nm, value) and transposed (wavelengths down the first
 * column, one sample a column).
 */
import { parse } from 'csv-parse/sync';
import { ascending, numberFrom, scaleToFraction, wavelengthOfColumn } from '../spectral-columns.ts';
import {
  type Assumption,
  ExchangeProblem,
  FILE_LIMITS,
  type Quantity,
  type ReadChoices,
  type SpectralRow,
  type SpectralTable,
  quantityFrom,
  refuseOversize,
} from '../spectral-table.ts';
import { say } from '../sentences.ts';

const COLORIMETRIC = ['LAB_L', 'LAB_A', 'LAB_B', 'XYZ_X', 'XYZ_Y', 'XYZ_Z'];

export function readCsv(text: string, choices: ReadChoices = {}): SpectralTable {
  refuseOversize(text);
  const body = text.replace(/^\uFEFF/, '').replace(/^(?:[ \t]*#[^\n]*\n)+/, '');
  const delimiter = delimiterOf(body);
  let grid: string[][];
  try {
    grid = parse(body, {
      delimiter,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      max_record_size: 1_000_000,
    });
  } catch (error) {
    throw new ExchangeProblem(say('not-csv', { cause: (error as Error).message }));
  }
  if (grid.length === 0) throw new ExchangeProblem(say('empty'));
  if (grid.length > FILE_LIMITS.rows || (grid[0]?.length ?? 0) > FILE_LIMITS.columns) {
    throw new ExchangeProblem(
      say('size', {
        rows: grid.length,
        columns: grid[0]?.length ?? 0,
        mostRows: FILE_LIMITS.rows,
        mostColumns: FILE_LIMITS.columns,
      }),
    );
  }
  const assumptions: Assumption[] = [];
  const decimalComma = commaRule(grid, delimiter, choices, assumptions);
  const header = grid[0]!;
  const wide = header.filter((h) => wavelengthOfColumn(h) !== undefined).length >= 2;
  const colorimetric = header.some((h) => /^(LAB_L|XYZ_X)$/i.test(h));
  const rows =
    wide || colorimetric
      ? wideRows(grid, decimalComma, choices, assumptions)
      : downwardRows(grid, decimalComma, choices, assumptions);
  return {
    title: '',
    rows,
    notes: {},
    assumptions,
    ...(choices.geometry ? { geometry: choices.geometry } : {}),
  };
}

function delimiterOf(body: string): string {
  const head = body
    .split(/\r\n|\r|\n/)
    .slice(0, 5)
    .join('\n');
  const count = (d: string): number => head.split(d).length - 1;
  if (count('\t') > 0) return '\t';
  return count(';') > 0 ? ';' : ',';
}

/** A comma between digits is a decimal comma beyond doubt only where another character separates the cells. */
function commaRule(
  grid: readonly string[][],
  delimiter: string,
  choices: ReadChoices,
  assumptions: Assumption[],
): boolean {
  if (choices.decimalComma !== undefined) return choices.decimalComma;
  if (delimiter === ',') return false;
  const cells = grid.flat();
  const commas = cells.some((c) => /^-?\d+,\d+$/.test(c));
  const dots = cells.some((c) => /^-?\d+\.\d+$/.test(c));
  if (commas && dots) {
    throw new ExchangeProblem(say('mixed-decimals'), 'decimalComma');
  }
  if (commas) {
    assumptions.push({
      choice: 'decimalComma',
      sentence: say('cells-separated'),
    });
  }
  return commas;
}

function wideRows(
  grid: readonly string[][],
  decimalComma: boolean,
  choices: ReadChoices,
  assumptions: Assumption[],
): SpectralRow[] {
  const header = grid[0]!;
  const lower = header.map((h) => h.toLowerCase());
  const spectral = header.map((h, i) => ({ nm: wavelengthOfColumn(h), i })).filter((c) => c.nm !== undefined);
  const idAt = lower.findIndex((h) => ['sample_id', 'id', 'sample', 'name'].includes(h));
  const nameAt = lower.indexOf('name');
  const quantityAt = lower.indexOf('quantity');
  const parsed = grid.slice(1).map((cells, r) => {
    const points = spectral
      .filter((c) => (cells[c.i] ?? '') !== '')
      .map((c) => ({
        nm: c.nm!,
        value: numberFrom(cells[c.i]!, say('cell', { row: r + 2, column: header[c.i]! }), decimalComma),
      }));
    const quantity: Quantity =
      quantityAt >= 0 ? quantityFrom(cells[quantityAt] ?? '', say('row', { row: r + 2 })) : 'reflectance';
    return { cells, points, quantity };
  });
  const reflectances = parsed.filter((p) => p.quantity === 'reflectance').flatMap((p) => p.points);
  const largest = reflectances.reduce((m, p) => Math.max(m, p.value), Number.NEGATIVE_INFINITY);
  const factor = reflectances.length
    ? scaleToFraction(
        spectral.map((c) => header[c.i]!),
        largest,
        choices,
        assumptions,
      )
    : 1;
  const skip = new Set([idAt, nameAt, quantityAt, ...spectral.map((c) => c.i)]);
  return parsed.map(({ cells, points, quantity }, r) => {
    const scale = quantity === 'reflectance' ? factor : 1;
    const three = (names: string[]): number[] | undefined => {
      const at = names.map((n) => lower.indexOf(n.toLowerCase()));
      return at.every((i) => i >= 0 && (cells[i] ?? '') !== '')
        ? at.map((i) => numberFrom(cells[i]!, say('cell', { row: r + 2, column: header[i]! }), decimalComma))
        : undefined;
    };
    const lab = three(COLORIMETRIC.slice(0, 3));
    const xyz = three(COLORIMETRIC.slice(3));
    const id = rearmed(idAt >= 0 ? cells[idAt]! : String(r + 1));
    return {
      id,
      name: nameAt >= 0 ? rearmed(cells[nameAt] ?? id) : id,
      quantity,
      ...ascending(
        points.map((p) => ({ nm: p.nm, value: p.value * scale })),
        say('row-start', { row: r + 2 }),
      ),
      ...(lab ? { lab: { L: lab[0]!, a: lab[1]!, b: lab[2]! } } : {}),
      ...(xyz ? { xyz: { X: xyz[0]!, Y: xyz[1]!, Z: xyz[2]! } } : {}),
      tags: Object.fromEntries(
        header.flatMap((h, i) =>
          skip.has(i) || COLORIMETRIC.includes(h.toUpperCase()) || !cells[i] ? [] : [[h, rearmed(cells[i])]],
        ),
      ) as Record<string, string>,
    };
  });
}

/** Wavelengths down the first column; every further column is a sample (one of them: a long file). */
function downwardRows(
  grid: readonly string[][],
  decimalComma: boolean,
  choices: ReadChoices,
  assumptions: Assumption[],
): SpectralRow[] {
  const asNumber = (c: string | undefined): number =>
    Number((c ?? '').replace(decimalComma ? ',' : '\u0000', '.'));
  const startsWithNumber = Number.isFinite(asNumber(grid[0]![0])) && grid[0]![0] !== '';
  const names = startsWithNumber
    ? grid[0]!.slice(1).map((_, i) => say('sample', { number: i + 1 }))
    : grid[0]!.slice(1);
  const body = startsWithNumber ? grid : grid.slice(1);
  if (names.length === 0) {
    throw new ExchangeProblem(say('one-column'));
  }
  const first = startsWithNumber ? 1 : 2;
  const wavelengths = body.map((cells, r) =>
    numberFrom(cells[0] ?? '', say('wavelength-cell', { row: r + first }), decimalComma),
  );
  const outside = wavelengths.find((nm) => nm < 300 || nm > 1100);
  if (outside !== undefined) {
    throw new ExchangeProblem(say('first-column', { outside }));
  }
  const columns = names.map((_, s) =>
    body.map((cells, r) =>
      numberFrom(cells[s + 1] ?? '', say('cell', { row: r + first, column: s + 2 }), decimalComma),
    ),
  );
  const largest = columns.flat().reduce((m, v) => Math.max(m, v), Number.NEGATIVE_INFINITY);
  const factor = scaleToFraction(names, largest, choices, assumptions);
  return names.map((name, s) => ({
    id: rearmed(name),
    name: rearmed(name),
    quantity: 'reflectance' as const,
    ...ascending(
      wavelengths.map((nm, i) => ({ nm, value: columns[s]![i]! * factor })),
      say('column', { number: s + 2 }),
    ),
    tags: {},
  }));
}

/** Takes back the apostrophe the writer put before a text that a spreadsheet would run. */
function rearmed(text: string): string {
  return /^'[=+\-@]/.test(text) ? text.slice(1) : text;
}
