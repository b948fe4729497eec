import { createHash } from 'node:crypto';
import { DEMO_RACK } from '../../src/device/practice/paints/demo-rack.ts';
import { bareCardReflectance, filmReflectance } from '../../src/device/practice/transfer/film.ts';
import { GRID_SIZE, type Spectrum } from '../../src/colour/grid.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import type { PracticeSurface } from '../../src/device/practice/surfaces.ts';
import {
  type TransferPart,
  transferReflectance,
} from '../../src/device/practice/transfer/transfer-reflectance.ts';
import type { OpenLadder, OpenRung } from '../ladder/open-ladder.ts';
import { conflict } from '../problem.ts';
import type { Db } from '../store/open-store.ts';
import { tubeById } from '../store/tubes.ts';
import { say } from '../api/sentences/instrument.ts';

/** The pour in hand departs from what the scale shows by this share, besides the scale's own rounding. */
const POURING = 0.01;

/** An invented card: internal reflectance of its two sides. */
const CARD = { black: 0.04, white: 0.84 };
/** Dry film of a practice drawdown, um, and how far one departs from the next, as a share. */
const FILM_UM = 40;
const FILM_SCATTER = 0.08;
/** A film takes tenths of a second to work out and is read three times or more. */
const films = new Map<string, { readonly black: Spectrum; readonly white: Spectrum }>();
const MOST_FILMS = 200;

/**
 * What lies under the practice head on a rung: the invented paints mixed as weighed, each pour truly off by what its
 * scale rounds away and by one per cent or so. The same rung has the same true mixture every time it is read.
 * @throws HttpProblem when a tube is a real one: the practice instrument cannot read real paint
 */
export function practiceRung(
  db: Db,
  ladder: OpenLadder,
  rung: OpenRung,
  over: 'opaque' | 'black' | 'white' = 'opaque',
): PracticeSurface {
  if (rung.row.kind === 'card') return bareCard(rung.row.side!);
  const masses = trueMasses(ladder, rung, 1);
  return over === 'opaque' ? surfaceOf(db, masses) : filmOver(partsOf(db, masses), rung.row.id, over);
}

function bareCard(side: 'black' | 'white'): PracticeSurface {
  const backing = new Float64Array(GRID_SIZE).fill(CARD[side]);
  return { kind: 'swatch', reflectance: bareCardReflectance(backing, { geometry: '45/0' }) };
}

/** One drawdown has one thickness, whichever side of the card it is read over. */
function filmOver(parts: readonly TransferPart[], rungId: string, over: 'black' | 'white'): PracticeSurface {
  const thickness = FILM_UM * Math.exp(FILM_SCATTER * new SeededNoise(seedOf(`film ${rungId}`)).normal());
  const key = JSON.stringify([rungId, parts.map(({ paint, mass }) => [paint.id, mass])]);
  let sides = films.get(key);
  if (!sides) {
    const backings = [CARD.black, CARD.white].map((R) => new Float64Array(GRID_SIZE).fill(R));
    const [black, white] = filmReflectance(parts, { thickness, backings }, { geometry: '45/0' });
    sides = { black: black!, white: white! };
    if (films.size >= MOST_FILMS) films.clear();
    films.set(key, sides);
  }
  return { kind: 'swatch', reflectance: sides[over] };
}

/** The same for a mixture that is checked. Masses as given are taken as poured without error. */
export function practiceMixture(db: Db, masses: Readonly<Record<string, number>>): PracticeSurface {
  return surfaceOf(db, new Map(Object.entries(masses).filter(([, mass]) => mass > 0)));
}

function trueMasses(ladder: OpenLadder, rung: OpenRung, scale: number): Map<string, number> {
  const noise = new SeededNoise(seedOf(rung.row.id));
  const step = ladder.plan.request.scaleResolution;
  const masses = new Map<string, number>();
  const add = (id: string, grams: number): void => void masses.set(id, (masses.get(id) ?? 0) + grams);
  const poured = rung.parts.map((part, i) => {
    const shown = rung.grams?.[i] ?? part.grams;
    // Two roundings of the scale, as in calibrate's weighing (sd of a step over the root of six).
    return Math.max(0, shown * (1 + POURING * noise.normal()) + (step / Math.sqrt(6)) * noise.normal());
  });
  const total = poured.reduce((sum, grams) => sum + grams, 0);
  rung.parts.forEach((part, i) => {
    const grams = (scale * poured[i]!) / total;
    if (part.tubeId !== null) return add(part.tubeId, grams);
    const source = ladder.rungs.find((r) => r.row.id === part.fromSwatchId)!;
    for (const [id, mass] of trueMasses(ladder, source, grams)) add(id, mass);
  });
  return masses;
}

function surfaceOf(db: Db, masses: ReadonlyMap<string, number>): PracticeSurface {
  const reflectance = transferReflectance(partsOf(db, masses), { geometry: '45/0' });
  return { kind: 'swatch', reflectance };
}

function partsOf(db: Db, masses: ReadonlyMap<string, number>): TransferPart[] {
  return [...masses].map(([id, mass]): TransferPart => {
    const tube = tubeById(db, id);
    const paint = DEMO_RACK.find((p) => p.id === tube?.practice_paint_id);
    if (!paint) {
      throw conflict(say('not-invented', { tube: tube?.label ?? id }), '/problems/practice-only');
    }
    return { paint, mass };
  });
}

function seedOf(id: string): number {
  return createHash('sha256').update(id).digest().readUInt32LE(0);
}
