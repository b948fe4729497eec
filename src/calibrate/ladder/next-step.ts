/**
 * The one next thing to do on a ladder, worked out from what is there: no memory, no clock, so that a pulled cable or
 * a closed lid changes nothing. Order: connect and set the head when reading is due; weigh (a pile before what is let
 * down from it); read; close the block with a white; fit.
 */
import type { RepeatsVerdict } from '../repeats/judge-repeats.ts';
import { say } from './sentences.ts';

export type ReadOver = 'opaque' | 'black' | 'white';

/** One rung as far as its progress goes. */
export interface RungProgress {
  readonly id: string;
  readonly name: string;
  /** Every pour has its grams; a masstone has nothing to weigh. */
  readonly weighed: boolean;
  /** Rungs it is let down from. */
  readonly madeFrom: readonly string[];
  /** Per thing it is read over: kept readings, and how many more the repeats ask for. */
  readonly reads: readonly {
    readonly over: ReadOver;
    readonly kept: number;
    readonly verdict: Pick<RepeatsVerdict, 'more' | 'sentence'>;
  }[];
}

export interface LadderProgress {
  readonly rungs: readonly RungProgress[];
  /** Bare cards to read when films are read over them: how many more each side asks for. */
  readonly cards?: { readonly black: number; readonly white: number };
  /** Readings come from a head (else they are typed, and nothing needs setting). */
  readonly byHead: boolean;
  readonly connected: boolean;
  /** Dark, trap and white are good. Otherwise the sentence that says what to do. */
  readonly headReady: true | string;
  /** From `whiteDue`: why a new white is due. */
  readonly whiteDue?: string;
  /** A fit of these readings stands. */
  readonly fitted: boolean;
  /** What the fit asks for next, in one sentence. */
  readonly advice?: string;
}

export type NextAction =
  'weigh' | 'read' | 'card' | 'calibrate' | 'connect' | 'fit' | 'measure more' | 'done';

export interface NextStep {
  readonly action: NextAction;
  readonly rungId: string | null;
  readonly over: ReadOver | null;
  /** Readings left here. */
  readonly left: number;
  /** Short, for the big type. */
  readonly headline: string;
  readonly sentence: string;
}

/** What to do next. */
export function nextStep(state: LadderProgress): NextStep {
  const plain = (action: NextAction, headline: string, sentence: string): NextStep => ({
    action,
    rungId: null,
    over: null,
    left: 0,
    headline,
    sentence,
  });
  const weigh = nextToWeigh(state.rungs);
  if (weigh) {
    return {
      ...plain('weigh', say('weigh', { rung: weigh.name }), say('weigh-how')),
      rungId: weigh.id,
    };
  }
  const read = nextToRead(state);
  if (read) {
    if (state.byHead && !state.connected) {
      return plain('connect', say('plug-in'), say('ladder-waits'));
    }
    if (state.byHead && state.headReady !== true) return plain('calibrate', say('set-head'), state.headReady);
    if (state.byHead && state.whiteDue) return plain('calibrate', say('read-white'), state.whiteDue);
    return read;
  }
  // The last block is closed before anything is made of it.
  if (state.byHead && state.connected && state.whiteDue) {
    return plain('calibrate', say('read-white'), state.whiteDue);
  }
  if (!state.fitted) {
    return plain('fit', say('fit-tube'), say('fit-how'));
  }
  if (state.advice) return plain('measure more', say('measure-more'), state.advice);
  return plain('done', 'Done', say('done'));
}

function nextToWeigh(rungs: readonly RungProgress[]): RungProgress | undefined {
  const weighed = new Set(rungs.filter((r) => r.weighed).map((r) => r.id));
  const waiting = rungs.filter((r) => !r.weighed);
  return waiting.find((r) => r.madeFrom.every((id) => weighed.has(id))) ?? waiting[0];
}

function nextToRead(state: LadderProgress): NextStep | undefined {
  for (const side of ['black', 'white'] as const) {
    const left = state.cards?.[side] ?? 0;
    if (left > 0) {
      return {
        action: 'card',
        rungId: null,
        over: side,
        left,
        headline: say('read-card', { side }),
        sentence: say('read-card-how', { count: left }),
      };
    }
  }
  for (const rung of state.rungs) {
    for (const { over, verdict } of rung.reads) {
      if (verdict.more === 0) continue;
      return {
        action: 'read',
        rungId: rung.id,
        over,
        left: verdict.more,
        headline:
          over === 'opaque'
            ? say('read-rung', { rung: rung.name })
            : say('read-rung-over', { rung: rung.name, side: over }),
        sentence: verdict.sentence,
      };
    }
  }
  return undefined;
}

/** How far the ladder is: readings kept that count, of all it asks for. */
export function ladderDone(rungs: readonly RungProgress[]): { readonly done: number; readonly of: number } {
  const reads = rungs.flatMap((r) => r.reads);
  const done = reads.reduce((sum, r) => sum + r.kept, 0);
  return { done, of: reads.reduce((sum, r) => sum + r.kept + r.verdict.more, 0) };
}
