/** Every catalogue of the program with its German. `tests/web/german.test.ts` holds it complete. */
import { benchGerman } from './bench.ts';
import { checksGerman } from './checks.ts';
import { colourGerman } from './colour.ts';
import { deviceGerman } from './device.ts';
import { entryGerman } from './entry.ts';
import { exchangeGerman } from './exchange.ts';
import { fitGerman } from './fit.ts';
import { fittingGerman } from './fitting.ts';
import { importingGerman } from './importing.ts';
import { instrumentGerman } from './instrument.ts';
import { ladderGerman } from './ladder.ts';
import { laddersGerman } from './ladders.ts';
import { linearityGerman } from './linearity.ts';
import { mixGerman } from './mix.ts';
import { paletteGerman } from './palette.ts';
import { profileFileGerman } from './profile-file.ts';
import { profileGerman } from './profile.ts';
import { readingGerman } from './reading.ts';
import { repeatsGerman } from './repeats.ts';
import { shapeGerman } from './shape.ts';
import { studyGerman } from './study.ts';
import { swatchSetGerman } from './swatch-set.ts';
import { tileGerman } from './tile.ts';
import type { GermanCatalogue } from './german.ts';

export const GERMAN: readonly GermanCatalogue[] = [
  benchGerman,
  checksGerman,
  colourGerman,
  deviceGerman,
  entryGerman,
  exchangeGerman,
  fitGerman,
  fittingGerman,
  importingGerman,
  instrumentGerman,
  ladderGerman,
  laddersGerman,
  linearityGerman,
  mixGerman,
  paletteGerman,
  profileFileGerman,
  profileGerman,
  readingGerman,
  repeatsGerman,
  shapeGerman,
  studyGerman,
  swatchSetGerman,
  tileGerman,
];
