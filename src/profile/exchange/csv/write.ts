/**
 * Plain CSV after RFC 4180: UTF-8, comma, decimal point, one row a sample, fractions. A text cell that begins with
 * = + - @ gets a leading apostrophe, so that a spreadsheet does not run it as a formula. What a flat table cannot
 * hold goes into the sidecar JSON.
 */
import { stringify } from 'csv-stringify/sync';
import type { SpectralTable, Written } from '../spectral-table.ts';

export interface WrittenCsv extends Written {
  /** Metadata of the whole table as JSON text, to be kept beside the CSV under the same name with .json. */
  readonly sidecar: string;
}

export function writeCsv(table: SpectralTable): WrittenCsv {
  const wavelengths = [...new Set(table.rows.flatMap((r) => r.wavelengthsNm))].sort((a, b) => a - b);
  const tagNames = [...new Set(table.rows.flatMap((r) => Object.keys(r.tags)))];
  const lab = table.rows.some((r) => r.lab);
  const xyz = table.rows.some((r) => r.xyz);
  const header = [
    'sample_id',
    'name',
    'quantity',
    ...tagNames,
    ...(lab ? ['LAB_L', 'LAB_A', 'LAB_B'] : []),
    ...(xyz ? ['XYZ_X', 'XYZ_Y', 'XYZ_Z'] : []),
    ...wavelengths.map((nm) => `R_${nm}`),
  ];
  const rows = table.rows.map((r) => {
    const at = new Map(r.wavelengthsNm.map((nm, i) => [nm, r.values[i]!]));
    return [
      ...[r.id, r.name, r.quantity, ...tagNames.map((t) => r.tags[t] ?? '')].map(safeCell),
      ...(lab ? [r.lab?.L, r.lab?.a, r.lab?.b] : []),
      ...(xyz ? [r.xyz?.X, r.xyz?.Y, r.xyz?.Z] : []),
      ...wavelengths.map((nm) => at.get(nm)),
    ].map((v) => (v === undefined ? '' : String(v)));
  });
  const { rows: _rows, assumptions: _assumptions, ...facts } = table;
  return { text: stringify([header, ...rows]), notHeld: [], sidecar: `${JSON.stringify(facts, null, 2)}\n` };
}

/** Disarms a text cell that a spreadsheet would take for a formula. */
export function safeCell(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}
