/**
 * Tolerant reading of CGATS.17 / ISO 28178 text and its dialects: any identifier or none, either quote, wrapped lines,
 * CRLF, several tables, one column per wavelength in any known spelling or the standard's NM/DEC and NM/PCT pairs.
 * What had to be assumed is listed; what cannot be assumed is asked.
 */
import { GEOMETRIES, type Geometry } from '../../../calibrate/swatch-set/schema.ts';
import { ascending, numberFrom, scaleToFraction, wavelengthOfColumn } from '../spectral-columns.ts';
import {
  type Assumption,
  ExchangeProblem,
  type Quantity,
  type ReadChoices,
  type SpectralRow,
  type SpectralTable,
  quantityFrom,
  refuseOversize,
} from '../spectral-table.ts';
import { type Block, cgatsBlocks } from './blocks.ts';
import { say } from '../sentences.ts';

const COLORIMETRIC = ['LAB_L', 'LAB_A', 'LAB_B', 'XYZ_X', 'XYZ_Y', 'XYZ_Z'];
const HEADER_MEMBERS = new Set([
  'ORIGINATOR',
  'FILE_DESCRIPTOR',
  'DESCRIPTOR',
  'CREATED',
  'INSTRUMENTATION',
  'MEASUREMENT_GEOMETRY',
  'WEIGHTING_FUNCTION',
]);

/** Reads the whole file. @throws ExchangeProblem with one sentence; with `.choice` where an answer would settle it. */
export function readCgats(text: string, choices: ReadChoices = {}): SpectralTable {
  refuseOversize(text);
  const assumptions: Assumption[] = [];
  const blocks = cgatsBlocks(text, choices, assumptions);
  const header = Object.assign({}, ...blocks.map((b) => b.header).reverse()) as Record<string, string>;
  const rows = blocks.flatMap((block) => rowsOf(block, choices, assumptions));
  if (rows.length === 0) throw new ExchangeProblem(say('no-rows'));
  const geometry = choices.geometry ?? geometryFrom(header['MEASUREMENT_GEOMETRY']);
  const white = /^ILLUMINANT AND OBSERVER, (.*)$/.exec(header['WEIGHTING_FUNCTION'] ?? '')?.[1];
  const created = header['CREATED'];
  const notes = Object.entries(header).filter(([k]) => !HEADER_MEMBERS.has(k));
  return {
    title: header['FILE_DESCRIPTOR'] ?? header['DESCRIPTOR'] ?? '',
    ...(created ? { created } : {}),
    ...(header['ORIGINATOR'] ? { originator: header['ORIGINATOR'] } : {}),
    ...(header['INSTRUMENTATION'] ? { instrument: header['INSTRUMENTATION'] } : {}),
    ...(geometry ? { geometry } : {}),
    ...(white ? { white } : {}),
    rows,
    notes: Object.fromEntries(notes),
    assumptions,
  };
}

function geometryFrom(words: string | undefined): Geometry | undefined {
  return GEOMETRIES.find((g) => words?.toLowerCase().startsWith(g));
}

function rowsOf(block: Block, choices: ReadChoices, assumptions: Assumption[]): SpectralRow[] {
  const upper = block.fields.map((f) => f.toUpperCase());
  const quantityAt = upper.indexOf('QUANTITY');
  const pairs = upper.flatMap((f, i) =>
    f === 'SPECTRAL_NM' && /^SPECTRAL_(DEC|PCT)$/.test(upper[i + 1] ?? '') ? [i] : [],
  );
  const columns = block.fields
    .map((f, i) => ({ nm: wavelengthOfColumn(f), i }))
    .filter((c) => c.nm !== undefined);
  if (pairs.length === 0 && columns.length === 0 && !upper.includes('LAB_L') && !upper.includes('XYZ_X')) {
    throw new ExchangeProblem(say('no-columns', { fields: block.fields.slice(0, 8).join(', ') }));
  }
  const spectralNames = pairs.length ? pairs.map((i) => upper[i + 1]!) : columns.map((c) => upper[c.i]!);
  const decimalComma = choices.decimalComma ?? false;
  const points = block.rows.map((cells, r) => {
    const at = (i: number): number =>
      numberFrom(
        cells[i] ?? '',
        say('row-at', { row: r + 1, column: block.fields[i] ?? i + 1 }),
        decimalComma,
      );
    return pairs.length
      ? pairs.map((i) => ({ nm: at(i), value: at(i + 1) }))
      : columns.map((c) => ({ nm: c.nm!, value: at(c.i) }));
  });
  const quantities = block.rows.map((cells, r): Quantity =>
    quantityAt >= 0 ? quantityFrom(cells[quantityAt] ?? '', say('row', { row: r + 1 })) : 'reflectance',
  );
  const reflectances = points.filter((_, r) => quantities[r] === 'reflectance').flat();
  const largest = reflectances.reduce((m, p) => Math.max(m, p.value), Number.NEGATIVE_INFINITY);
  const factor = reflectances.length ? scaleToFraction(spectralNames, largest, choices, assumptions) : 1;
  const spectral = new Set([...columns.map((c) => c.i), ...pairs.flatMap((i) => [i, i + 1])]);
  const idAt = upper.findIndex((f) => f === 'SAMPLE_ID' || f === 'SAMPLEID');
  const nameAt = upper.indexOf('SAMPLE_NAME');
  return block.rows.map((cells, r) => {
    const quantity = quantities[r]!;
    const scale = quantity === 'reflectance' ? factor : 1;
    const where = say('row-start', { row: r + 1 });
    const curve = ascending(
      points[r]!.map((p) => ({ nm: p.nm, value: p.value * scale })),
      where,
    );
    const tags = block.fields
      .map((f, i) => [f, cells[i] ?? '', i] as const)
      .filter(
        ([, , i]) =>
          !spectral.has(i) && ![idAt, nameAt, quantityAt].includes(i) && !COLORIMETRIC.includes(upper[i]!),
      )
      .map(([f, v]) => [f, v]);
    const three = (names: string[]): number[] | undefined =>
      names.every((n) => upper.includes(n))
        ? names.map((n) =>
            numberFrom(cells[upper.indexOf(n)] ?? '', say('row-at', { row: r + 1, column: n }), decimalComma),
          )
        : undefined;
    const lab = three(COLORIMETRIC.slice(0, 3));
    const xyz = three(COLORIMETRIC.slice(3));
    const id = (idAt >= 0 ? cells[idAt] : undefined) ?? String(r + 1);
    return {
      id,
      name: (nameAt >= 0 ? cells[nameAt] : undefined) ?? id,
      quantity,
      ...curve,
      ...(lab ? { lab: { L: lab[0]!, a: lab[1]!, b: lab[2]! } } : {}),
      ...(xyz ? { xyz: { X: xyz[0]!, Y: xyz[1]!, Z: xyz[2]! } } : {}),
      tags: Object.fromEntries(tags) as Record<string, string>,
    };
  });
}
