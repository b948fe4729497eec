import { composeRungs } from '../ladder/composition.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import type { OpenLadder, OpenRung } from '../ladder/open-ladder.ts';
import { isOpen } from '../ladder/progress.ts';
import { ageOf, meanOf, type Over, type SetDraft } from './set-draft.ts';
import { say } from '../api/sentences/fitting.ts';

/** An id of a swatch set has up to 200 characters; the rung's name takes the rest. */
const LONGEST_LABEL = 150;

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
  draft.leftOut.push(...blockSentences(draft, ladder, tube.label));
  for (const rung of ladder.rungs) {
    if (!rung.readings.some((r) => counts(draft, r))) continue;
    if (!weighedThrough(rung, ladder)) {
      draft.leftOut.push(say('not-weighed', { tube: tube.label, rung: rung.row.name }));
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
      const readings = closed(draft, rung, over);
      if (readings.length === 0) return;
      // Sentences of the fit name a swatch by its id: a person is to know it by the tube's label.
      const id = draft.free(`${tube.label.slice(0, LONGEST_LABEL)} ${rung.row.name}${suffix}`);
      draft.swatches.push({
        id,
        ...composition,
        film,
        ...(backing ? { backing } : {}),
        ...ageOf(readings),
        readings: draft.use(readings),
      });
      draft.origins.set(id, rung.row);
      for (const later of draft.keptAgain(rung.readings, over)) {
        if (!draft.takesOpen) {
          draft.readAgain.add(`${tube.label} ${rung.row.name}`);
          continue;
        }
        const againId = draft.free(`${id} again`);
        draft.swatches.push({
          id: againId,
          ...composition,
          film,
          ...(backing ? { backing } : {}),
          ...ageOf(later),
          again: id,
          readings: draft.use(later),
        });
        draft.origins.set(againId, rung.row);
      }
      if (!named.has(rung.row.id)) named.set(rung.row.id, id);
    };
    add('', 'opaque', 'opaque');
    for (const side of ['black', 'white'] as const) {
      if (closed(draft, rung, side).length === 0) continue;
      const backing = cards.get(side);
      if (backing !== undefined)
        add(` over ${side}`, side, { thickness: null, drawdown: rung.row.id }, backing);
      else {
        draft.leftOut.push(say('card-missing', { tube: tube.label, rung: rung.row.name, side, card: side }));
      }
    }
  }
}

const waits = (draft: SetDraft, reading: JudgedReading): boolean => !draft.takesOpen && isOpen(reading);

/** Kept, of this draft's form, and enclosed by two whites where a head took it. */
function counts(draft: SetDraft, reading: JudgedReading): boolean {
  return reading.state === 'kept' && reading.row.form_id === draft.formId && !waits(draft, reading);
}

function closed(draft: SetDraft, rung: OpenRung, over: Over): JudgedReading[] {
  return draft.kept(rung.readings, over).filter((r) => counts(draft, r));
}

/** Which readings the fit does without because of the white: still to come, or moved too far. */
function blockSentences(draft: SetDraft, ladder: OpenLadder, label: string): string[] {
  const all = [...ladder.rungs, ...ladder.cards];
  const ofForm = (rung: OpenRung): JudgedReading[] =>
    rung.readings.filter((r) => r.row.form_id === draft.formId);
  const waiting = all.flatMap((rung) => {
    const n = ofForm(rung).filter((r) => r.state === 'kept' && waits(draft, r)).length;
    return n > 0 ? [say('count-of', { count: n, rung: rung.row.name })] : [];
  });
  const refused = all.flatMap((rung) => {
    const n = ofForm(rung).filter((r) => r.state === 'sent back' && r.verdict?.accepted === false).length;
    // Where the rung was read again, nothing is missing.
    return n > 0 && !rung.readings.some((r) => counts(draft, r)) ? [rung.row.name] : [];
  });
  return [
    ...(waiting.length > 0 ? [say('waiting-for-white', { tube: label, readings: waiting.join(', ') })] : []),
    ...(refused.length > 0 ? [say('all-sent-back', { tube: label, rungs: refused.join(', the ') })] : []),
  ];
}

function draftCards(draft: SetDraft, ladder: OpenLadder, tubeId: string): Map<Over, string> {
  const cards = new Map<Over, string>();
  for (const card of ladder.cards) {
    const { row } = card;
    const kept = closed(draft, card, 'opaque');
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
