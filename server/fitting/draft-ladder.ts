import { composeRungs } from '../ladder/composition.ts';
import type { OpenLadder, OpenRung } from '../ladder/open-ladder.ts';
import { meanOf, type Over, type SetDraft } from './set-draft.ts';

/** Adds a ladder's rungs, and its bare cards, to a draft. */
export function draftLadder(
  draft: SetDraft,
  ladder: OpenLadder,
  tube: { readonly id: string; readonly label: string },
): void {
  const { scaleResolution } = ladder.plan.request;
  const cards = draftCards(draft, ladder, tube.id);
  const composed = composeRungs(
    ladder.rungs.map((r) => ({
      id: r.row.id,
      parts: r.parts,
      grams: r.grams ?? r.parts.map((p) => p.grams),
    })),
    ladder.row.tube_id,
    ladder.row.white_tube_id,
    scaleResolution,
  );
  /** Rungs that are in the draft, by the name they have there. */
  const named = new Map<string, string>();
  for (const rung of ladder.rungs) {
    const read = rung.readings.some((r) => r.state === 'kept' && r.row.form_id === draft.formId);
    if (!read) continue;
    if (!weighedThrough(rung, ladder)) {
      draft.leftOut.push(
        `${tube.label} ${rung.row.name} was read and not weighed; enter its grams and fit again.`,
      );
      continue;
    }
    draft.scaleResolutions.push(scaleResolution);
    // A rung made from one that is not in the draft cannot point at it: its shares through the dilution are given.
    const pointed = rung.parts.every((p) => p.fromSwatchId === null || named.has(p.fromSwatchId));
    const composition = pointed
      ? { made: madeOf(rung, named) }
      : { masses: { ...composed.get(rung.row.id)!.shares } };
    const add = (
      suffix: string,
      over: Over,
      film: 'opaque' | { thickness: null; drawdown: string },
      backing?: string,
    ): void => {
      const readings = draft.kept(rung.readings, over);
      if (readings.length === 0) return;
      const id = draft.free(`${tube.id} ${rung.row.name}${suffix}`);
      draft.swatches.push({
        id,
        ...composition,
        film,
        ...(backing ? { backing } : {}),
        readings: draft.use(readings),
      });
      draft.origins.set(id, rung.row);
      if (!named.has(rung.row.id)) named.set(rung.row.id, id);
    };
    add('', 'opaque', 'opaque');
    for (const side of ['black', 'white'] as const) {
      if (draft.kept(rung.readings, side).length === 0) continue;
      const backing = cards.get(side);
      if (backing !== undefined)
        add(` over ${side}`, side, { thickness: null, drawdown: rung.row.id }, backing);
      else {
        draft.leftOut.push(
          `${tube.label} ${rung.row.name} over ${side} was read and the bare ${side} card was not; read the card and fit again.`,
        );
      }
    }
  }
}

function draftCards(draft: SetDraft, ladder: OpenLadder, tubeId: string): Map<Over, string> {
  const cards = new Map<Over, string>();
  for (const { row, readings } of ladder.cards) {
    const kept = draft.kept(readings, 'opaque');
    if (kept.length === 0 || row.side === null) continue;
    const id = draft.free(`${tubeId} card ${row.side}`);
    draft.backings.push({ id, reflectance: meanOf(draft.use(kept)) });
    cards.set(row.side, id);
  }
  return cards;
}

function madeOf(rung: OpenRung, named: ReadonlyMap<string, string>) {
  return rung.parts.map((part, i) => {
    const grams = rung.grams![i]!;
    return part.tubeId === null
      ? { from: named.get(part.fromSwatchId!)!, grams }
      : { tube: part.tubeId, grams };
  });
}

/** A rung can be fitted when it and whatever it was made from were weighed. */
function weighedThrough(rung: OpenRung, ladder: OpenLadder): boolean {
  if (rung.grams === undefined) return false;
  return rung.parts.every((part) => {
    const source = part.fromSwatchId && ladder.rungs.find((r) => r.row.id === part.fromSwatchId);
    return !source || weighedThrough(source, ladder);
  });
}
