/** Every catalogue of what the program says, in English: the codes that problem details carry. */
import type { Sentences } from '../../../src/sentence/catalogue.ts';
import { BENCH } from './bench.ts';
import { CHECKS } from './checks.ts';
import { FITTING } from './fitting.ts';
import { IMPORTING } from './importing.ts';
import { INSTRUMENT } from './instrument.ts';
import { LADDERS } from './ladders.ts';
import { ENTRY } from '../../../src/calibrate/entry/sentences.ts';
import { LADDER } from '../../../src/calibrate/ladder/sentences.ts';
import { LINEARITY } from '../../../src/calibrate/linearity/sentences.ts';
import { READING } from '../../../src/calibrate/reading/sentences.ts';
import { REPEATS } from '../../../src/calibrate/repeats/sentences.ts';
import { SWATCH_SET } from '../../../src/calibrate/swatch-set/sentences.ts';
import { TILE } from '../../../src/calibrate/tile/sentences.ts';
import { COLOUR } from '../../../src/colour/sentences.ts';
import { DEVICE } from '../../../src/device/sentences.ts';
import { PALETTE } from '../../../src/fit/palette-sentences.ts';
import { FIT } from '../../../src/fit/sentences.ts';
import { MIX } from '../../../src/mix/sentences.ts';
import { EXCHANGE } from '../../../src/profile/exchange/sentences.ts';
import { PROFILE_FILE } from '../../../src/profile/read-sentences.ts';
import { PROFILE } from '../../../src/profile/sentences.ts';
import { SHAPE } from '../../../src/sentence/shape-sentences.ts';
import { STUDY } from '../../../src/study/sentences.ts';

export const CATALOGUES: readonly Sentences[] = [
  BENCH,
  CHECKS,
  FITTING,
  IMPORTING,
  INSTRUMENT,
  LADDERS,
  ENTRY,
  LADDER,
  LINEARITY,
  READING,
  REPEATS,
  SWATCH_SET,
  TILE,
  COLOUR,
  DEVICE,
  PALETTE,
  FIT,
  MIX,
  EXCHANGE,
  PROFILE_FILE,
  PROFILE,
  SHAPE,
  STUDY,
];
