import { nextStep, type NextStep, type RungProgress } from '../../src/calibrate/ladder/next-step.ts';
import { judgeRepeats } from '../../src/calibrate/repeats/judge-repeats.ts';
import type { Instrument } from '../api/instrument.ts';
import type { JudgedReading } from './judge-readings.ts';
import type { OpenLadder, OpenRung } from './open-ladder.ts';
import { say } from '../api/sentences/ladders.ts';

type Over = 'opaque' | 'black' | 'white';
export interface RungNeed {
  readonly over: Over;
  readonly kept: number;
  readonly more: number;
  readonly sentence: string;
}

/** What a rung is read over: opaque films by themselves, thin films over both sides of a card as well. */
export function readOvers(rung: OpenRung): readonly Over[] {
  return rung.row.film === 'card' ? ['opaque', 'black', 'white'] : ['opaque'];
}

/** What a rung still asks for. The form with the most kept readings counts: forms are not mixed. */
export function needsOf(
  rung: OpenRung,
  wanted: number,
  overs: readonly Over[] = readOvers(rung),
): RungNeed[] {
  return overs.map((over) => {
    const groups = rung.groups.filter((g) => g.over === over && g.main);
    const best = groups.toSorted((a, b) => keptOf(rung, b.formId, over) - keptOf(rung, a.formId, over))[0];
    if (!best) {
      const empty = judgeRepeats([], { channels: [], wanted });
      return { over, kept: 0, more: empty.more, sentence: empty.sentence };
    }
    const kept = keptOf(rung, best.formId, over);
    // A reading the painter kept against the program's advice counts as well.
    const more = Math.max(0, best.verdict.more - Math.max(0, kept - best.verdict.kept.length));
    return { over, kept, more, sentence: best.verdict.sentence };
  });
}

function keptOf(rung: OpenRung, formId: string, over: Over): number {
  return rung.readings.filter(
    (r) => r.state === 'kept' && r.main && r.row.form_id === formId && r.row.over_what === over,
  ).length;
}

export interface LadderSurroundings {
  readonly instrument: Instrument;
  /** A fit stands that used every kept reading. */
  readonly fitted: boolean;
  readonly advice: string | undefined;
}

/** Taken by a head, and the white that closes its block is still to come. */
export function isOpen({ row, verdict }: JudgedReading): boolean {
  if (verdict !== undefined) return false;
  return typeof (JSON.parse(row.raw) as { block?: unknown } | null)?.block === 'number';
}

/** The one next thing to do on a ladder. */
export function nextOf(ladder: OpenLadder, around: LadderSurroundings): NextStep {
  const wanted = ladder.plan.request.repeats;
  const { instrument } = around;
  const rungs = ladder.rungs.map((rung): RungProgress => ({
    id: rung.row.id,
    name: rung.row.name,
    weighed: rung.grams !== undefined,
    madeFrom: rung.parts.flatMap((p) => (p.fromSwatchId ? [p.fromSwatchId] : [])),
    reads: needsOf(rung, wanted).map(({ over, kept, more, sentence }) => ({
      over,
      kept,
      verdict: { more, sentence },
    })),
  }));
  const side = (name: 'black' | 'white'): number => {
    const card = ladder.cards.find((c) => c.row.side === name);
    return card ? needsOf(card, 1, ['opaque'])[0]!.more : 0;
  };
  const read = [...ladder.rungs, ...ladder.cards].flatMap((r) => r.readings);
  const typed =
    read.length > 0 && ['typed', 'file'].includes(read.at(-1)!.row.source) && instrument.state === 'none';
  const white = instrument.steps.find((s) => s.step === 'white tile');
  const open = read.filter((r) => r.state === 'kept' && isOpen(r)).length;
  // Between readings the white is due by count, age or warmth; at the end whenever a block is open.
  const closing =
    open > 0 && rungs.every((r) => r.reads.every(({ verdict }) => verdict.more === 0))
      ? say('close-block', { count: open, readings: open === 1 ? 'reading' : 'readings' })
      : undefined;
  const due = white?.state === 'stale' ? white.sentence : closing;
  return nextStep({
    rungs,
    cards: { black: side('black'), white: side('white') },
    byHead: !typed,
    connected: instrument.state === 'ready' || instrument.state === 'reading',
    headReady: instrument.readyToRead ? true : instrument.next,
    ...(due ? { whiteDue: due } : {}),
    fitted: around.fitted,
    ...(around.advice ? { advice: around.advice } : {}),
  });
}
