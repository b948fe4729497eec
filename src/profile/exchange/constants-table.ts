import type { PaletteProfile, ProfileTube } from '../schema.ts';
import { fromQuotelessJson, quotelessJson } from './quoteless-json.ts';
import type { Quantity, SpectralRow, SpectralTable } from './spectral-table.ts';
import { ExchangeProblem } from './spectral-table.ts';
import { say } from './sentences.ts';

/**
 * A profile's constants as a table: K and S of every tube, then the columns of their covariance factor. Everything a
 * prediction needs is held, as notes where it is not a curve; evidence and provenance are not (`notHeldByTables`).
 */
export function tableFromProfile(profile: PaletteProfile): SpectralTable {
  const grid = profile.wavelengths;
  const row = (
    tube: ProfileTube,
    quantity: Quantity,
    values: readonly number[],
    extra: Record<string, string> = {},
  ): SpectralRow => ({
    id: tube.id,
    name: tube.label,
    quantity,
    wavelengthsNm: grid,
    values,
    tags: {
      PIGMENTS: tube.pigments.join(' '),
      ROLE: tube.role ?? '',
      DENSITY: tube.density === undefined ? '' : String(tube.density),
      COLUMN: '',
      ...extra,
    },
  });
  const factors = (tube: ProfileTube, which: 'own' | 'shared'): SpectralRow[] =>
    tube.covariance[which].flatMap((column, c) => [
      row(tube, `${which} factor K`, column.slice(0, grid.length), { COLUMN: String(c) }),
      row(tube, `${which} factor S`, column.slice(grid.length), { COLUMN: String(c) }),
    ]);
  return {
    title: profile.title ?? 'Palette profile: K and S per unit mass, relative to the white',
    created: profile.created,
    originator: `${profile.generator.name} ${profile.generator.version}`,
    geometry: profile.geometry,
    rows: profile.tubes.flatMap((t) => [
      row(t, 'K', t.K),
      row(t, 'S', t.S),
      ...factors(t, 'own'),
      ...factors(t, 'shared'),
    ]),
    notes: {
      BASIS: profile.basis,
      WHITE_TUBE: profile.white,
      CROWDING: String(profile.crowding ?? 0),
      SURFACE: quotelessJson(profile.surface),
      ...(profile.frameDoubt ? { FRAME_DOUBT: quotelessJson(profile.frameDoubt) } : {}),
      DISCREPANCY_LNKS: profile.discrepancy.sdLnKS.join(' '),
      DISCREPANCY_CORRELATION_NM: String(profile.discrepancy.correlationNm),
      ...(profile.discrepancy.sdHaze === undefined
        ? {}
        : { DISCREPANCY_HAZE: String(profile.discrepancy.sdHaze) }),
      ...(profile.weighing ? { WEIGHING: quotelessJson(profile.weighing) } : {}),
      ...(profile.noise ? { NOISE: quotelessJson(profile.noise) } : {}),
    },
    assumptions: [],
  };
}

/** What a table of constants leaves behind, said once to whoever exports one. */
export function notHeldByTables(profile: PaletteProfile): string[] {
  const lost: string[] = [];
  if (profile.tubes.some((t) => t.evidence)) lost.push(say('evidence-in-json'));
  if (profile.tubes.some((t) => t.maker || t.batch || t.provenance) || profile.provenance) {
    lost.push(say('provenance-in-json'));
  }
  if (profile.whiteScatteringPerMicrometre) lost.push(say('scattering-in-json'));
  return lost;
}

/**
 * The profile again from a table written by `tableFromProfile`, whatever file it travelled in.
 * @param createdIso used where the table has no date.
 * @throws ExchangeProblem when the table has no K and S, or lacks what a prediction needs.
 */
export function profileFromTable(table: SpectralTable, createdIso: string): unknown {
  const note = (name: string): string => {
    const value = table.notes[name];
    if (value === undefined) {
      throw new ExchangeProblem(say('table-lacks', { what: name }));
    }
    return value;
  };
  const object = (name: string): unknown => fromQuotelessJson(note(name));
  const ids = [...new Set(table.rows.filter((r) => r.quantity === 'K').map((r) => r.id))];
  if (ids.length === 0) throw new ExchangeProblem(say('no-constants'));
  const [name = 'unknown', version = ''] = (table.originator ?? '').split(' ');
  return {
    format: 'palette-profile',
    version: 1,
    ...(table.title ? { title: table.title } : {}),
    created: table.created ?? createdIso,
    generator: { name, version },
    basis: note('BASIS'),
    wavelengths: table.rows[0]!.wavelengthsNm,
    geometry: table.geometry,
    surface: object('SURFACE'),
    white: note('WHITE_TUBE'),
    ...(Number(table.notes['CROWDING'] ?? 0) !== 0 ? { crowding: Number(table.notes['CROWDING']) } : {}),
    ...(table.notes['FRAME_DOUBT'] ? { frameDoubt: object('FRAME_DOUBT') } : {}),
    tubes: ids.map((id) => tubeFrom(id, table)),
    discrepancy: {
      sdLnKS: note('DISCREPANCY_LNKS').split(' ').map(Number),
      correlationNm: Number(note('DISCREPANCY_CORRELATION_NM')),
      ...(table.notes['DISCREPANCY_HAZE'] ? { sdHaze: Number(table.notes['DISCREPANCY_HAZE']) } : {}),
    },
    ...(table.notes['WEIGHING'] ? { weighing: object('WEIGHING') } : {}),
    ...(table.notes['NOISE'] ? { noise: object('NOISE') } : {}),
  };
}

function tubeFrom(id: string, table: SpectralTable): unknown {
  const rows = table.rows.filter((r) => r.id === id);
  const curve = (q: Quantity): readonly number[] => {
    const found = rows.find((r) => r.quantity === q);
    if (!found) throw new ExchangeProblem(say('no-scattering', { tube: id }));
    return found.values;
  };
  const columns = (which: 'own' | 'shared'): number[][] => {
    const of = (c: 'K' | 'S'): SpectralRow[] =>
      rows
        .filter((r) => r.quantity === `${which} factor ${c}`)
        .sort((p, q) => Number(p.tags['COLUMN']) - Number(q.tags['COLUMN']));
    const s = of('S');
    return of('K').map((k, i) => [...k.values, ...(s[i]?.values ?? [])]);
  };
  const { tags, name } = rows[0]!;
  return {
    id,
    label: name,
    pigments: (tags['PIGMENTS'] ?? '').split(' ').filter(Boolean),
    ...(tags['ROLE'] === 'white' ? { role: 'white' } : {}),
    ...(tags['DENSITY'] ? { density: Number(tags['DENSITY']) } : {}),
    K: curve('K'),
    S: curve('S'),
    covariance: { own: columns('own'), shared: columns('shared') },
  };
}
