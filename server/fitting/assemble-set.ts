import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { SwatchSetProblem } from '../../src/calibrate/swatch-set/problem.ts';
import type { Check, Swatch, SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { foldHistory } from '../ladder/fold-history.ts';
import { formOf, judgedReadings, type OpenLadder, openLadder } from '../ladder/open-ladder.ts';
import { checksOf } from '../store/checks.ts';
import { historyOf } from '../store/history.ts';
import { laddersOfPalette } from '../store/ladders.ts';
import type { Db } from '../store/open-store.ts';
import { paletteFacts } from '../store/palette-facts.ts';
import { paletteById } from '../store/palettes.ts';
import { cardsOfFiles, fileSwatchesOf, type SwatchRow, swatchOfCheck } from '../store/swatches.ts';
import { tubesOf } from '../store/tubes.ts';
import { benchNoise } from './bench-noise.ts';
import { draftLadder } from './draft-ladder.ts';
import { SetDraft } from './set-draft.ts';
import { say } from '../api/sentences/fitting.ts';

/** A swatch set made of what the store holds, and where each part of it came from. */
export interface AssembledSet {
  readonly set: SwatchSet;
  /** Store swatch of each swatch id of the set. */
  readonly origins: ReadonlyMap<string, SwatchRow>;
  readonly readingIds: readonly string[];
  readonly leftOut: readonly string[];
}

/** Readings a check asks for. */
export const CHECK_READINGS = 3;
const NOTHING_DONE = foldHistory([]);

/**
 * Everything kept for a palette that was read in one form. Ladders that were put aside are left out.
 * `takesOpen`: with readings that still wait for their closing white and films read again, as a file of readings has
 * them. `ladder`: that ladder and its white's alone.
 * @throws SwatchSetProblem when what there is makes no set: no white, a tube without its masstone
 */
export function assembleSet(
  db: Db,
  paletteId: string,
  formId: string,
  options: { readonly takesOpen?: boolean; readonly ladder?: OpenLadder } = {},
): AssembledSet {
  const draft = new SetDraft(formId, options.takesOpen);
  const tubes = tubesOf(db, paletteId);
  const { ladder: one } = options;
  if (!one) draftFiles(db, draft, paletteId);
  const ladders = laddersOfPalette(db, paletteId)
    .filter(({ tube_id: id }) => !one || id === one.row.tube_id || id === one.row.white_tube_id)
    .map((row) => openLadder(db, row.id))
    .filter((ladder) => !ladder.folded.closed);
  for (const ladder of ladders) {
    draftLadder(
      draft,
      ladder,
      tubes.find((t) => t.id === ladder.row.tube_id)!,
    );
  }
  if (!one) draftChecks(db, draft, paletteId);
  const facts = paletteFacts(db, paletteId);
  const noise = facts.noise ?? benchNoise(draft, ladders);
  // One set states one scale; the coarsest one used is on the safe side.
  const coarsest = draft.scaleResolutions.length > 0 ? Math.max(...draft.scaleResolutions) : undefined;
  const weighing = facts.weighing ?? (coarsest === undefined ? undefined : { resolution: coarsest });
  const used = usedTubes([...draft.swatches, ...draft.checks]);
  const title = paletteById(db, paletteId)?.title;
  const document = {
    format: 'swatch-set',
    version: 1,
    ...(title ? { title } : {}),
    instrument: formOf(db, formId),
    ...(weighing ? { weighing } : {}),
    ...(noise ? { noise } : {}),
    backings: draft.backings,
    tubes: tubes
      .filter((tube) => used.has(tube.id) || tube.role === 'white')
      .map((tube) => ({
        id: tube.id,
        label: tube.label,
        pigments: JSON.parse(tube.pigments) as string[],
        ...(tube.role ? { role: tube.role } : {}),
        ...(tube.density === null ? {} : { density: tube.density }),
      })),
    swatches: draft.swatches,
    checks: draft.checks,
  };
  const { origins, readingIds, leftOut, readAgain } = draft;
  if (readAgain.size > 0) {
    leftOut.push(say('read-again', { names: [...readAgain].join(', ') }));
  }
  return { set: heldTogether(document, leftOut), origins, readingIds, leftOut };
}

/** The set read; where it does not hold together for what was left out of it, that is said as well. */
function heldTogether(document: unknown, leftOut: readonly string[]): SwatchSet {
  try {
    return readSwatchSet(document);
  } catch (error) {
    if (!(error instanceof SwatchSetProblem) || leftOut.length === 0) throw error;
    throw new SwatchSetProblem(`${error.message} ${leftOut.join(' ')}`, error.at);
  }
}

/** Swatches and bare cards that came with a file; what the file had is what they are. */
function draftFiles(db: Db, draft: SetDraft, paletteId: string): void {
  draftFileCards(db, draft, paletteId);
  for (const row of fileSwatchesOf(db, paletteId)) {
    const kept = draft.kept(judgedReadings(db, row.id, NOTHING_DONE).readings, 'opaque');
    if (kept.length === 0) continue;
    draft.origins.set(row.name, row);
    const painted = JSON.parse(row.painted) as Pick<
      Swatch,
      'masses' | 'made' | 'film' | 'backing' | 'again' | 'ageDays'
    >;
    if (painted.again !== undefined && !draft.takesOpen) {
      draft.readAgain.add(painted.again);
      continue;
    }
    draft.swatches.push({ ...painted, id: row.name, readings: draft.use(kept) });
  }
}

/** Bare cards that came with a file. */
export function draftFileCards(db: Db, draft: SetDraft, paletteId: string): void {
  for (const row of cardsOfFiles(db, paletteId)) {
    const kept = draft.kept(judgedReadings(db, row.id, NOTHING_DONE).readings, 'opaque');
    if (kept.length > 0) draft.backings.push({ id: row.name, reflectance: draft.use(kept)[0]! });
  }
}

/** Mixtures never fitted, with readings in the draft's form or with a truth. @returns the store's check by its id in the draft */
export function draftChecks(db: Db, draft: SetDraft, paletteId: string): Map<string, string> {
  const rows = new Map<string, string>();
  for (const row of checksOf(db, paletteId)) {
    const swatch = swatchOfCheck(db, row.id);
    const folded = foldHistory(historyOf(db, { checkId: row.id }));
    const kept = swatch
      ? draft.kept(judgedReadings(db, swatch.id, folded, CHECK_READINGS).readings, 'opaque')
      : [];
    const truth = row.truth ? (JSON.parse(row.truth) as number[]) : undefined;
    if (kept.length === 0 && !truth) continue;
    const { film = 'opaque', backing } = JSON.parse(row.film) as Partial<Pick<Check, 'film' | 'backing'>>;
    const id = draft.free(row.title);
    rows.set(id, row.id);
    draft.checks.push({
      id,
      masses: JSON.parse(row.masses) as Record<string, number>,
      film,
      ...(backing ? { backing } : {}),
      ...(kept.length > 0 ? { readings: kept.map((r) => [...r.values]) } : {}),
      ...(truth ? { truth } : {}),
    });
  }
  return rows;
}

function usedTubes(items: readonly (Swatch | Check)[]): Set<string> {
  const used = new Set<string>();
  for (const item of items) {
    for (const [id, mass] of Object.entries(item.masses ?? {})) if (mass > 0) used.add(id);
    for (const part of item.made ?? []) if ('tube' in part) used.add(part.tube);
  }
  return used;
}
