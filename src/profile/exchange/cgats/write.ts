/**
 * CGATS.17 / ISO 28178 text: keyword lines, a data format and a data block per table. Names outside the standard's
 * list are declared with KEYWORD before use. ASCII, LF, tabs; no byte-order mark, which strict readers reject.
 */
import type { Quantity, SpectralRow, SpectralTable, Written } from '../spectral-table.ts';
import { say } from '../sentences.ts';

const GEOMETRY_WORDS = {
  '45/0': '45/0',
  'd/8 specular included': 'd/8 specular included',
  'd/8 specular excluded': 'd/8 specular excluded',
} as const;

const STANDARD_TAGS = new Set(['SAMPLE_BACKING']);

/** One table per set of rows with the same quantity kind and wavelengths, all in one file. */
export function writeCgats(table: SpectralTable): Written {
  const notHeld: string[] = [];
  const groups = new Map<string, SpectralRow[]>();
  for (const row of table.rows) {
    const key = `${kind(row.quantity)}|${row.wavelengthsNm.join(',')}|${row.lab ? 'lab' : ''}|${row.xyz ? 'xyz' : ''}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const text = [...groups.values()].map((rows) => oneTable(table, rows, notHeld)).join('\n');
  return { text, notHeld };
}

function kind(quantity: Quantity): 'reflectance' | 'constants' | 'factors' {
  if (quantity === 'reflectance') return 'reflectance';
  return quantity === 'K' || quantity === 'S' ? 'constants' : 'factors';
}

function oneTable(table: SpectralTable, rows: readonly SpectralRow[], notHeld: string[]): string {
  const first = rows[0]!;
  const isReflectance = first.quantity === 'reflectance';
  const tagNames = [...new Set(rows.flatMap((r) => Object.keys(r.tags)))];
  const columnOf = (nm: number): string => `${isReflectance ? 'SPECTRAL_DEC' : 'SPECTRAL_NM'}${nm}`;
  const spectral = first.wavelengthsNm.map(columnOf);
  const declared = [
    'SAMPLE_NAME',
    'QUANTITY',
    ...tagNames.map(tagColumn).filter((t) => !STANDARD_TAGS.has(t)),
    ...spectral,
  ];
  const colorimetric = [
    ...(first.lab ? ['LAB_L', 'LAB_A', 'LAB_B'] : []),
    ...(first.xyz ? ['XYZ_X', 'XYZ_Y', 'XYZ_Z'] : []),
  ];
  const fields = [
    'SAMPLE_ID',
    'SAMPLE_NAME',
    'QUANTITY',
    ...tagNames.map(tagColumn),
    ...colorimetric,
    ...spectral,
  ];

  const lines = ['CGATS.17'];
  const keyword = (name: string, value: string): void => {
    lines.push(`${name}\t${quoted(value, notHeld)}`);
  };
  keyword('ORIGINATOR', table.originator ?? 'tintladder');
  keyword('FILE_DESCRIPTOR', table.title || 'untitled');
  keyword('CREATED', table.created ?? '');
  if (table.instrument) keyword('INSTRUMENTATION', table.instrument);
  if (table.geometry) keyword('MEASUREMENT_GEOMETRY', GEOMETRY_WORDS[table.geometry]);
  if (table.white) keyword('WEIGHTING_FUNCTION', `ILLUMINANT AND OBSERVER, ${table.white}`);
  for (const [name, value] of Object.entries(table.notes)) {
    lines.push(`KEYWORD\t"${tagColumn(name)}"`);
    keyword(tagColumn(name), value);
  }
  for (const name of new Set(declared)) lines.push(`KEYWORD\t"${name}"`);
  lines.push(`NUMBER_OF_FIELDS\t${fields.length}`, 'BEGIN_DATA_FORMAT', fields.join('\t'), 'END_DATA_FORMAT');
  lines.push(`NUMBER_OF_SETS\t${rows.length}`, 'BEGIN_DATA');
  for (const row of rows) {
    const cells = [
      quoted(row.id, notHeld),
      quoted(row.name, notHeld),
      quoted(row.quantity, notHeld),
      ...tagNames.map((t) => quoted(row.tags[t] ?? '', notHeld)),
      ...(row.lab ? [row.lab.L, row.lab.a, row.lab.b].map(String) : []),
      ...(row.xyz ? [row.xyz.X, row.xyz.Y, row.xyz.Z].map(String) : []),
      ...row.values.map(String),
    ];
    lines.push(cells.join('\t'));
  }
  lines.push('END_DATA', '');
  return lines.join('\n');
}

/** A tag's name as a CGATS name: upper case, no spaces. */
export function tagColumn(name: string): string {
  return name
    .trim()
    .replace(/[^A-Za-z0-9]+/g, '_')
    .toUpperCase();
}

function quoted(text: string, notHeld: string[]): string {
  const plain = text.replaceAll('"', "'").replace(/[\r\n\t]+/g, ' ');
  const ascii = plain.replace(/[^\x20-\x7e]/g, '?');
  if (ascii !== text) {
    const sentence = say('written-as', { text: text.slice(0, 60), ascii: ascii.slice(0, 60) });
    if (!notHeld.includes(sentence)) notHeld.push(sentence);
  }
  return `"${ascii}"`;
}
