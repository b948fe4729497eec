import type { InstrumentDescription, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { readSwatchSet } from '../../calibrate/swatch-set/read.ts';
import { fromQuotelessJson, quotelessJson } from './quoteless-json.ts';
import { ExchangeProblem, type SpectralRow, type SpectralTable } from './spectral-table.ts';
import { say } from './sentences.ts';

/** Channel positions (nm) of a spectral or band instrument; a tristimulus set has none. */
function channelsNm(instrument: InstrumentDescription): readonly number[] | undefined {
  if (instrument.kind === 'spectral') return instrument.wavelengths;
  return instrument.kind === 'bands' ? instrument.bands.map((b) => b.centre) : undefined;
}

/**
 * The readings of a swatch set as a table, one row a repeat, with what is needed to make the set again (masses, film,
 * backing, role) as tags. Tristimulus readings go as XYZ with the white of the instrument.
 */
export function tableFromSwatchSet(set: SwatchSet): SpectralTable {
  const nm = channelsNm(set.instrument);
  const instrument = set.instrument;
  const rowsOf = (
    kind: 'swatch' | 'check' | 'backing',
    id: string,
    readings: readonly (readonly number[])[],
    tags: Record<string, string>,
  ): SpectralRow[] =>
    readings.map((values, r) => ({
      id: readings.length > 1 ? `${id}#${r + 1}` : id,
      name: id,
      quantity: 'reflectance',
      wavelengthsNm: nm ?? [],
      values: nm ? values : [],
      ...(nm ? {} : { xyz: { X: values[0]!, Y: values[1]!, Z: values[2]! } }),
      tags: { KIND: kind, SAMPLE_BACKING: '', MASSES: '', FILM: '', ...tags },
    }));
  const painted = (
    s: SwatchSet['swatches'][number] | SwatchSet['checks'][number],
  ): Record<string, string> => ({
    MASSES: quotelessJson(s.made ?? s.masses),
    FILM: s.film === 'opaque' ? 'opaque' : `${s.film.drawdown} ${s.film.thickness ?? 'unknown'}`,
    SAMPLE_BACKING: s.backing ?? '',
  });
  const { geometry, kind } = instrument;
  return {
    title: set.title ?? 'swatch set',
    geometry,
    ...(instrument.kind === 'tristimulus'
      ? { white: `${instrument.illuminant}/${instrument.observer}` }
      : {}),
    rows: [
      ...set.swatches.flatMap((s) => rowsOf('swatch', s.id, s.readings, painted(s))),
      ...set.checks.flatMap((s) => rowsOf('check', s.id, s.readings ?? [], painted(s))),
      ...set.backings.flatMap((b) => rowsOf('backing', b.id, [b.reflectance], {})),
    ],
    notes: {
      KIND_OF_READING: kind,
      TUBES: quotelessJson(set.tubes),
      ...(set.source ? { SOURCE: set.source } : {}),
      ...(set.weighing ? { WEIGHING: quotelessJson(set.weighing) } : {}),
      ...(set.noise ? { NOISE: quotelessJson(set.noise) } : {}),
      ...(instrument.kind === 'bands' ? { BANDS: quotelessJson(instrument.bands) } : {}),
    },
    assumptions: [],
  };
}

/** What a table of readings leaves behind. */
export function notHeldFromSwatchSet(set: SwatchSet): string[] {
  const lost: string[] = [];
  if (set.instrument.response) lost.push(say('response-in-json'));
  if (set.checks.some((c) => c.truth)) lost.push(say('truths-in-json'));
  return lost;
}

/**
 * A swatch set again from a table written by `tableFromSwatchSet`.
 * @throws ExchangeProblem where the table lacks the tubes or masses; SwatchSetProblem where the set itself is wrong.
 */
export function swatchSetFromTable(table: SpectralTable): SwatchSet {
  const object = (name: string): unknown => {
    const text = table.notes[name];
    return text === undefined ? undefined : fromQuotelessJson(text);
  };
  const tubes = object('TUBES');
  if (!tubes) {
    throw new ExchangeProblem(say('no-masses'));
  }
  if (!table.geometry) {
    throw new ExchangeProblem(say('no-geometry'), 'geometry');
  }
  const kind = table.notes['KIND_OF_READING'] ?? 'spectral';
  const [illuminant, observer] = (table.white ?? '').split('/');
  const instrument =
    kind === 'bands'
      ? { kind, geometry: table.geometry, bands: object('BANDS') }
      : kind === 'tristimulus'
        ? { kind, geometry: table.geometry, illuminant, observer }
        : { kind, geometry: table.geometry, wavelengths: table.rows[0]!.wavelengthsNm };
  const grouped = new Map<string, SpectralRow[]>();
  for (const row of table.rows) {
    const key = `${row.tags['KIND'] ?? 'swatch'} ${row.name}`;
    grouped.set(key, [...(grouped.get(key) ?? []), row]);
  }
  const reading = (r: SpectralRow): readonly number[] => (r.xyz ? [r.xyz.X, r.xyz.Y, r.xyz.Z] : r.values);
  const painted = (rows: readonly SpectralRow[]): unknown => {
    const { MASSES = '', FILM = 'opaque', SAMPLE_BACKING = '' } = rows[0]!.tags;
    const weighed = fromQuotelessJson(MASSES);
    const cut = FILM.lastIndexOf(' ');
    const thickness = FILM.slice(cut + 1);
    return {
      id: rows[0]!.name,
      ...(Array.isArray(weighed) ? { made: weighed } : { masses: weighed }),
      film:
        FILM === 'opaque'
          ? 'opaque'
          : { drawdown: FILM.slice(0, cut), thickness: thickness === 'unknown' ? null : Number(thickness) },
      ...(SAMPLE_BACKING ? { backing: SAMPLE_BACKING } : {}),
      readings: rows.map(reading),
    };
  };
  const groupsOf = (k: string): SpectralRow[][] =>
    [...grouped].filter(([key]) => key.startsWith(`${k} `)).map(([, rows]) => rows);
  return readSwatchSet({
    format: 'swatch-set',
    version: 1,
    ...(table.title ? { title: table.title } : {}),
    ...(table.notes['SOURCE'] ? { source: table.notes['SOURCE'] } : {}),
    instrument,
    ...(table.notes['WEIGHING'] ? { weighing: object('WEIGHING') } : {}),
    ...(table.notes['NOISE'] ? { noise: object('NOISE') } : {}),
    tubes,
    backings: groupsOf('backing').map((rows) => ({ id: rows[0]!.name, reflectance: reading(rows[0]!) })),
    swatches: groupsOf('swatch').map(painted),
    checks: groupsOf('check').map(painted),
  });
}
