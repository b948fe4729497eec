import type { PaletteProfile } from '../../src/profile/schema.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { newId } from '../store/ids.ts';
import type { Db } from '../store/open-store.ts';
import { addPalette, makePaletteCurrent } from '../store/palettes.ts';
import { addProfile, makeProfileCurrent, profileById } from '../store/profiles.ts';
import { addTube } from '../store/tubes.ts';

export interface ImportedProfile {
  readonly paletteId: string;
  readonly profileId: string;
  readonly tubeIds: string[];
}

/**
 * Keeps a profile as a palette of its own. Where the store already has a tube of an id, the new one gets the next
 * free number, in the palette and in the profile that is kept alike.
 */
export function importProfile(db: Db, profile: PaletteProfile, title: string, at: string): ImportedProfile {
  return db.transaction(() => {
    const palette = addPalette(db, { title, note: '', demo: false, at });
    const ids = new Map<string, string>();
    for (const tube of profile.tubes) {
      const words = {
        label: tube.label,
        pigments: tube.pigments,
        batch: '',
        bought: null,
        drying: 'unknown' as const,
        role: tube.id === profile.white ? ('white' as const) : null,
        density: tube.density ?? null,
        note: '',
        practicePaintId: null,
        replaces: null,
      };
      ids.set(tube.id, addTube(db, palette.id, words, at, tube.id).id);
    }
    const kept: PaletteProfile = {
      ...profile,
      white: ids.get(profile.white)!,
      tubes: profile.tubes.map((tube) => ({ ...tube, id: ids.get(tube.id)! })),
    };
    const row = {
      id: newId('profile'),
      palette_id: palette.id,
      fit_id: null,
      origin: 'import' as const,
      title,
      document: writeProfile(kept),
      created_at: at,
    };
    addProfile(db, row);
    makeProfileCurrent(db, profileById(db, row.id)!);
    makePaletteCurrent(db, palette.id);
    return { paletteId: palette.id, profileId: row.id, tubeIds: [...ids.values()] };
  })();
}
