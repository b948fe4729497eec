import { pilesOf, sharesOfPile } from '../../src/calibrate/swatch-set/piles.ts';
import type { Check, Swatch, SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { addCheck } from '../store/checks.ts';
import { newId } from '../store/ids.ts';
import type { Db } from '../store/open-store.ts';
import { addPalette, makePaletteCurrent } from '../store/palettes.ts';
import { writePaletteFacts } from '../store/palette-facts.ts';
import { addReading, formIdOf } from '../store/readings.ts';
import { addSwatch } from '../store/swatches.ts';
import { addTube } from '../store/tubes.ts';
import { readingFormOf } from './reading-form-of.ts';

export interface ImportedSet {
  readonly paletteId: string;
  readonly tubeIds: string[];
  readonly readingCount: number;
}

/** Keeps a swatch set as a palette of its own, all of it or nothing. */
export function importSwatchSet(db: Db, set: SwatchSet, title: string, at: string): ImportedSet {
  const form = readingFormOf(set.instrument);
  return db.transaction(() => {
    const formId = formIdOf(db, form, at);
    const palette = addPalette(db, { title, note: set.source ?? '', demo: false, at });
    writePaletteFacts(db, palette.id, { weighing: set.weighing, noise: set.noise });
    // Ids of tubes are unique in the store, so a second "white" becomes "white-2".
    const ids = new Map<string, string>();
    for (const tube of set.tubes) {
      const words = {
        label: tube.label ?? tube.id,
        pigments: tube.pigments ?? [],
        batch: '',
        bought: null,
        drying: 'unknown' as const,
        role: tube.role ?? null,
        density: tube.density ?? null,
        note: '',
        practicePaintId: null,
        replaces: null,
      };
      ids.set(tube.id, addTube(db, palette.id, words, at, tube.id).id);
    }
    let readingCount = 0;
    const read = (swatchId: string, values: readonly number[]): void => {
      addReading(db, { swatchId, formId, source: 'file', over: 'opaque', values, raw: {}, at });
      readingCount += 1;
    };
    const swatch = (
      name: string,
      kind: 'file' | 'card' | 'check',
      painted: object,
      checkId: string | null,
    ): string => {
      const id = newId('swatch');
      addSwatch(db, {
        id,
        palette_id: palette.id,
        ladder_id: null,
        check_id: checkId,
        kind,
        name,
        white_parts: null,
        parts: '[]',
        painted: JSON.stringify(painted),
        film: 'opaque',
        side: null,
      });
      return id;
    };
    for (const backing of set.backings) read(swatch(backing.id, 'card', {}, null), backing.reflectance);
    for (const item of set.swatches) {
      const id = swatch(item.id, 'file', painted(item, ids), null);
      for (const values of item.readings) read(id, values);
    }
    const piles = pilesOf(set);
    for (const check of set.checks) {
      const shares = sharesOfPile(
        piles,
        piles.pileOf.get(check.id)!,
        new Float64Array(piles.errorCount),
      ).shares;
      const flat = Object.fromEntries(
        piles.tubeIds.flatMap((id, t) => (shares[t]! > 0 ? [[ids.get(id)!, shares[t]!]] : [])),
      );
      const checkId = newId('check');
      addCheck(db, {
        id: checkId,
        palette_id: palette.id,
        title: check.id,
        masses: JSON.stringify(check.masses ? renamed(check.masses, ids) : flat),
        film: JSON.stringify({ film: check.film, backing: check.backing }),
        truth: check.truth ? JSON.stringify(check.truth) : null,
        note: check.note ?? '',
        created_at: at,
      });
      const id = swatch(check.id, 'check', painted(check, ids), checkId);
      for (const values of check.readings ?? []) read(id, values);
    }
    makePaletteCurrent(db, palette.id);
    return { paletteId: palette.id, tubeIds: [...ids.values()], readingCount };
  })();
}

function renamed(
  masses: Readonly<Record<string, number>>,
  ids: ReadonlyMap<string, string>,
): Record<string, number> {
  return Object.fromEntries(Object.entries(masses).map(([id, mass]) => [ids.get(id) ?? id, mass]));
}

function painted(item: Swatch | Check, ids: ReadonlyMap<string, string>): object {
  return {
    ...(item.masses ? { masses: renamed(item.masses, ids) } : {}),
    ...(item.made
      ? {
          made: item.made.map((p) => ('tube' in p ? { tube: ids.get(p.tube) ?? p.tube, grams: p.grams } : p)),
        }
      : {}),
    film: item.film,
    ...(item.backing ? { backing: item.backing } : {}),
    ...(item.note ? { note: item.note } : {}),
    ...(item.ageDays === undefined ? {} : { ageDays: item.ageDays }),
    ...('again' in item && item.again !== undefined ? { again: item.again } : {}),
  };
}
