import type { ReadingNoise, Weighing } from '../../src/calibrate/swatch-set/schema.ts';
import type { Db } from './open-store.ts';
import { readSetting, writeSetting } from './settings.ts';

/** What an imported file stated for all of its readings. */
export interface PaletteFacts {
  readonly weighing?: Weighing | undefined;
  readonly noise?: ReadingNoise | undefined;
}

const name = (paletteId: string): string => `facts of ${paletteId}`;

export function writePaletteFacts(db: Db, paletteId: string, facts: PaletteFacts): void {
  writeSetting(db, name(paletteId), facts);
}

export function paletteFacts(db: Db, paletteId: string): PaletteFacts {
  return (readSetting(db, name(paletteId)) as PaletteFacts | undefined) ?? {};
}
