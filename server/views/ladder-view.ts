import { mcdm } from '../../src/calibrate/repeats/mcdm.ts';
import type { Ladder, Rung } from '../api/ladders.ts';
import type { Finding } from '../api/words.ts';
import type { Bench } from '../bench.ts';
import { composeRungs } from '../ladder/composition.ts';
import { deedWords, weighingFindings } from '../ladder/deeds.ts';
import { openLadder, type OpenLadder, type OpenRung } from '../ladder/open-ladder.ts';
import { needsOf, nextOf, readOvers } from '../ladder/progress.ts';
import { tubeById } from '../store/tubes.ts';
import { ladderOutcome } from '../fitting/ladder-outcome.ts';
import { colourOfReading } from './colour-view.ts';
import { meanReading, readingView } from './reading-view.ts';
import { say } from '../api/sentences/ladders.ts';

/** A ladder as the pages see it. */
export function ladderView(bench: Bench, id: string): Ladder {
  return viewOf(bench, openLadder(bench.db, id));
}

export function viewOf(bench: Bench, ladder: OpenLadder): Ladder {
  const { row, plan, folded } = ladder;
  const { request } = plan;
  const composed = composeRungs(
    ladder.rungs.map((r) => ({
      id: r.row.id,
      parts: r.parts,
      grams: r.grams ?? r.parts.map((p) => p.grams),
    })),
    row.tube_id,
    row.white_tube_id,
    request.scaleResolution,
  );
  const outcome = ladderOutcome(bench.db, ladder);
  const rungs = ladder.rungs.map((rung): Rung => {
    const { share, relativeSigma } = composed.get(rung.row.id)!;
    const need = needsOf(rung, request.repeats);
    return {
      id: rung.row.id,
      name: rung.row.name,
      whiteParts: rung.row.white_parts ?? 0,
      film: rung.row.film,
      pulledOn: rung.pulledOn ?? null,
      parts: partsOf(bench, ladder, rung),
      weighed: rung.grams !== undefined,
      share,
      shareRelativeSigma: relativeSigma,
      readings: rung.readings.map(readingView),
      need: need.map(({ over, kept, more }) => ({ over, kept, wanted: kept + more })),
      done: rung.grams !== undefined && need.every((n) => n.more === 0),
      ...meanOf(rung),
      verdict: outcome.verdicts.get(rung.row.id) ?? null,
      findings: findingsOf(rung, row.tube_id, outcome.swapped),
    };
  });
  const needs = ladder.rungs.flatMap((rung) => needsOf(rung, request.repeats, readOvers(rung)));
  const done = needs.reduce((sum, n) => sum + n.kept, 0);
  const next = nextOf(ladder, {
    instrument: bench.instrument.view(),
    fitted: outcome.fitted,
    advice: outcome.suggestions[0]?.sentence,
  });
  const cards =
    ladder.cards.length === 0
      ? null
      : {
          black: ladder.cards
            .filter((c) => c.row.side === 'black')
            .flatMap((c) => c.readings.map(readingView)),
          white: ladder.cards
            .filter((c) => c.row.side === 'white')
            .flatMap((c) => c.readings.map(readingView)),
        };
  return {
    id: row.id,
    tubeId: row.tube_id,
    whiteTubeId: row.white_tube_id,
    state: folded.closed ? 'closed' : rungs.every((r) => r.done) ? 'complete' : 'open',
    startedAt: row.started_at,
    plan: {
      method: plan.method,
      scaleResolution: request.scaleResolution,
      smallestPour: request.smallestPour,
      tubeGrams: plan.tubeGrams,
      whiteGrams: plan.whiteGrams,
      worstRelativeSigma: plan.worstRelativeSigma,
      sentences: [...plan.sentences],
    },
    rungs,
    cards,
    progress: { done, of: needs.reduce((sum, n) => sum + n.kept + n.more, 0) },
    next: {
      action: next.action,
      rungId: next.rungId,
      over: next.over,
      headline: next.headline,
      sentence: next.sentence,
    },
    suggestions: [...outcome.suggestions],
    undo: deedWords(ladder, folded.undo),
    redo: deedWords(ladder, folded.redo),
  };
}

function partsOf(bench: Bench, ladder: OpenLadder, rung: OpenRung): Rung['parts'] {
  return rung.parts.map((part, i) => ({
    tubeId: part.tubeId,
    fromRungId: part.fromSwatchId,
    label:
      part.tubeId === null
        ? (ladder.rungs.find((r) => r.row.id === part.fromSwatchId)?.row.name ?? 'pile')
        : (tubeById(bench.db, part.tubeId)?.label ?? part.tubeId),
    plannedGrams: part.grams,
    weighedGrams: rung.grams?.[i] ?? null,
  }));
}

/** By the rung's name, else, after a fit, by what it reads like. */
function findingsOf(rung: OpenRung, tubeId: string, swapped: ReadonlySet<string>): Finding[] {
  const byName = weighingFindings(rung, rung.grams, tubeId);
  if (byName.length > 0 || !swapped.has(rung.row.id)) return byName;
  return [
    {
      level: 'warning',
      code: 'swapped',
      sentence: say('wrong-way-round', { rung: rung.row.name }),
    },
  ];
}

function meanOf(rung: OpenRung): Pick<Rung, 'mean' | 'colour' | 'mcdm'> {
  const mean = meanReading(rung.readings);
  if (!mean) return { mean: null, colour: null, mcdm: null };
  const { form } = mean.like;
  const labs = rung.readings
    .filter(
      (r) =>
        r.state === 'kept' &&
        r.main &&
        r.row.form_id === mean.like.row.form_id &&
        r.row.over_what === 'opaque',
    )
    .flatMap((r) => {
      const colour = colourOfReading(r.values, form);
      return colour
        ? [{ ...colour.Lab, white: `${colour.white.illuminant}/${colour.white.observer}` as const }]
        : [];
    });
  return {
    mean: mean.values,
    colour: colourOfReading(mean.values, form),
    mcdm: labs.length > 1 ? mcdm(labs) : null,
  };
}
