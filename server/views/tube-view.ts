import type { Tube } from '../api/tubes.ts';
import type { Bench } from '../bench.ts';
import { predictReflectance } from '../../src/fit/predict.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { openLadder, type OpenLadder } from '../ladder/open-ladder.ts';
import { needsOf } from '../ladder/progress.ts';
import { laddersOfTube } from '../store/ladders.ts';
import { currentProfile } from '../store/profiles.ts';
import { fileSwatchesOf } from '../store/swatches.ts';
import type { TubeRow } from '../store/tubes.ts';
import { cautionsFor } from './cautions.ts';
import { colourOfReading, colourOfReflectance } from './colour-view.ts';
import { meanReading } from './reading-view.ts';

type Known = Tube['known'];

/** What a palette's tubes are shown with; read once for a whole rack. */
export interface RackFacts {
  readonly profile: PaletteProfile | undefined;
  readonly fitId: string | null;
  /** Rungs that came with a file, by tube: shown as measured without a ladder. */
  readonly filed: ReadonlyMap<string, number>;
}

export function rackFacts(bench: Bench, paletteId: string): RackFacts {
  const row = currentProfile(bench.db, paletteId);
  const filed = new Map<string, number>();
  for (const swatch of fileSwatchesOf(bench.db, paletteId)) {
    const { masses = {}, made = [] } = JSON.parse(swatch.painted) as {
      masses?: Record<string, number>;
      made?: { tube?: string }[];
    };
    const ids = [
      ...Object.keys(masses).filter((id) => masses[id]! > 0),
      ...made.flatMap((m) => m.tube ?? []),
    ];
    for (const id of new Set(ids)) filed.set(id, (filed.get(id) ?? 0) + 1);
  }
  return {
    profile: row ? (JSON.parse(row.document) as PaletteProfile) : undefined,
    fitId: row?.fit_id ?? null,
    filed,
  };
}

export function tubeView(bench: Bench, row: TubeRow, facts: RackFacts): Tube {
  const pigments = JSON.parse(row.pigments) as string[];
  return {
    id: row.id,
    paletteId: row.palette_id,
    label: row.label,
    pigments,
    batch: row.batch,
    bought: row.bought,
    drying: row.drying,
    role: row.role,
    density: row.density,
    note: row.note,
    practicePaintId: row.practice_paint_id,
    replaces: row.replaces,
    putAway: row.put_away === 1,
    createdAt: row.created_at,
    known: knownOf(bench, row, facts),
    cautions: cautionsFor(pigments),
  };
}

function knownOf(bench: Bench, row: TubeRow, facts: RackFacts): Known {
  const ladder = laddersOfTube(bench.db, row.id)
    .map((l) => openLadder(bench.db, l.id))
    .findLast((l) => !l.folded.closed);
  const filed = facts.filed.get(row.id) ?? 0;
  const fitted = facts.profile?.tubes.find((tube) => tube.id === row.id);
  const done = ladder ? ladder.rungs.filter((r) => isDone(r, ladder)).length : filed;
  const total = ladder ? ladder.rungs.length : filed;
  const stage: Known['stage'] = fitted
    ? 'constants'
    : total > 0 && done === total
      ? 'ladder complete'
      : ladder
        ? 'ladder begun'
        : 'not measured';
  return {
    stage,
    ladderId: ladder?.row.id ?? null,
    rungsDone: done,
    rungsTotal: total,
    fitId: fitted ? facts.fitId : null,
    trust: fitted?.evidence?.trust ?? null,
    masstone: measuredColour(ladder, 0) ?? predictedColour(facts, row.id, 0),
    tint: measuredColour(ladder, 4) ?? predictedColour(facts, row.id, 4),
  };
}

function isDone(rung: OpenLadder['rungs'][number], ladder: OpenLadder): boolean {
  return rung.grams !== undefined && needsOf(rung, ladder.plan.request.repeats).every((n) => n.more === 0);
}

function measuredColour(ladder: OpenLadder | undefined, whiteParts: number): Known['masstone'] {
  const rung = ladder?.rungs.find((r) => r.row.white_parts === whiteParts);
  const mean = rung && meanReading(rung.readings);
  return mean ? colourOfReading(mean.values, mean.like.form) : null;
}

function predictedColour(facts: RackFacts, tubeId: string, whiteParts: number): Known['masstone'] {
  const { profile } = facts;
  if (!profile?.tubes.some((tube) => tube.id === tubeId)) return null;
  if (whiteParts > 0 && tubeId === profile.white) return null;
  const masses = whiteParts > 0 ? { [tubeId]: 1, [profile.white]: whiteParts } : { [tubeId]: 1 };
  return colourOfReflectance(predictReflectance(paletteOf(profile), masses).measured, 'prediction');
}
