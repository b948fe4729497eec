import { createHash } from 'node:crypto';
import { DEMO_RACK } from '../../src/device/practice/paints/demo-rack.ts';
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

/** The pour in hand departs from what the scale shows by this share, besides the scale's own rounding. */
const POURING = 0.01;

/**
 * What lies under the practice head on a rung: the invented paints mixed as weighed, each pour truly off by what its
 * scale rounds away and by one per cent or so. The same rung has the same true mixture every time it is read.
 * @throws HttpProblem when a tube is a real one: the practice instrument cannot read real paint
 */
export function practiceRung(db: Db, ladder: OpenLadder, rung: OpenRung): PracticeSurface {
  return surfaceOf(db, trueMasses(ladder, rung, 1));
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
  const parts = [...masses].map(([id, mass]): TransferPart => {
    const tube = tubeById(db, id);
    const paint = DEMO_RACK.find((p) => p.id === tube?.practice_paint_id);
    if (!paint) {
      throw conflict(
        `The practice instrument reads invented paints alone, and "${tube?.label ?? id}" is not one; connect a real head or use the demo rack.`,
        '/problems/practice-only',
      );
    }
    return { paint, mass };
  });
  return { kind: 'swatch', reflectance: transferReflectance(parts, { geometry: '45/0' }) };
}

function seedOf(id: string): number {
  return createHash('sha256').update(id).digest().readUInt32LE(0);
}
