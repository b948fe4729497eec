import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Ladder, Rung, Taken } from '../../../../server/api/ladders.ts';
import type { TakeReading, TypedReading } from '../../../../server/api/readings.ts';
import { call } from '../../api/call.ts';
import { say } from '../../parts/status-line.ts';
import { setInstrument } from '../../state/bench-state.ts';
import { sound, speak } from '../../state/voice.ts';
import { benchWords } from '../../text/bench.ts';
import { findingSays } from '../../text/findings.ts';
import { ladderWords } from '../../text/ladder.ts';
import { num } from '../../text/numbers.ts';
import type { StepName } from '../bench/bench-steps.ts';
import { readStep } from '../bench/calibrate.ts';
import { farWords } from './far-words.ts';
import { type FileQuestion, type FileReading, questionIn } from './file-entry.ts';
import { fullness, rungName, type Target, targetOf } from './target.ts';
import { said } from '../../text/said.ts';

/** What became of the last press, in letters to be read from two metres, and why. */
export interface Result {
  readonly kind: 'kept' | 'sent-back' | 'not-taken';
  readonly far: string;
  readonly why: string;
}
export type How =
  { readonly source: 'head' } | { readonly source: 'typed'; readonly reading: TypedReading } | FileReading;

/** What one can do to a ladder. One thing at a time; each answer carries the whole ladder, so nothing drifts. */
export class LadderHand implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  ladder: Ladder | undefined;
  busy = false;
  result: Result | undefined;
  refusal = '';
  /** What the bench wants to know of the file before it takes it. */
  question: FileQuestion | undefined;

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  hostConnected(): void {}

  /** Takes a ladder that arrived another way, unless a command of our own is on its way. */
  receive(ladder: Ladder): void {
    if (this.busy && this.ladder?.id === ladder.id) return;
    this.ladder = ladder;
    this.#host.requestUpdate();
  }

  forget(): void {
    this.result = undefined;
    this.refusal = '';
    this.#host.requestUpdate();
  }

  refuse(sentence: string): void {
    this.refusal = sentence;
    this.#host.requestUpdate();
  }

  /** True when a reading was stored. */
  async take(target: Target, how: How): Promise<boolean> {
    let stored = false;
    // What was said before this reading is over: the verdict is the news now.
    say('');
    await this.#do(async ({ id }) => {
      const over = target.kind === 'card' ? target.side : target.over;
      const body = { ...how, over } as TakeReading;
      const taken: Taken =
        target.kind === 'card'
          ? await call('takeCardReading', { params: { ladderId: id, side: target.side }, body })
          : await call('takeReading', { params: { ladderId: id, rungId: target.rung.id }, body });
      this.ladder = taken.ladder;
      this.tell(taken, target);
      stored = taken.reading !== null;
      return taken.ladder;
    });
    return stored;
  }

  /** A reading that a press of the head's own button took: the ladder first, so that what is said next is true. */
  async pressed(
    taken: Pick<Taken, 'reading' | 'findings'> & { readonly rungId: string | null },
  ): Promise<void> {
    await this.#do(async ({ id }) => {
      const ladder = await call('getLadder', { params: { ladderId: id } });
      this.ladder = ladder;
      say('');
      const rung = ladder.rungs.find((r) => r.id === taken.rungId);
      this.tell(taken, rung && taken.reading ? { kind: 'rung', rung, over: taken.reading.over } : undefined);
      return ladder;
    });
  }

  weigh(rung: Rung, grams: readonly number[]): Promise<void> {
    return this.#do(({ id }) =>
      call('weighRung', { params: { ladderId: id, rungId: rung.id }, body: { grams: [...grams] } }),
    );
  }

  decide(readingId: string, keep: boolean): Promise<void> {
    const reason = ladderWords().painterSays;
    return this.#do(({ id }) =>
      call('decideReading', { params: { ladderId: id, readingId }, body: { keep, reason } }),
    );
  }

  /** Sets the head on one of its steps without leaving the ladder. */
  set(step: StepName): Promise<void> {
    return this.#do(async (ladder) => {
      const instrument = await readStep(step);
      setInstrument(instrument);
      const seen = instrument.steps.find((s) => s.step === step);
      if (seen?.state !== 'good') throw new Error(said(seen?.sentence ?? instrument.next));
      say(benchWords().done(benchWords().steps[step]));
      return call('getLadder', { params: { ladderId: ladder.id } });
    });
  }

  async undo(): Promise<void> {
    if (!this.ladder?.undo) return;
    this.result = undefined;
    await this.#do(({ id }) => call('undo', { params: { ladderId: id } }));
    say(ladderWords().undone);
  }

  async redo(): Promise<void> {
    if (!this.ladder?.redo) return;
    await this.#do(({ id }) => call('redo', { params: { ladderId: id } }));
    say(ladderWords().redone);
  }

  /** Says what became of a reading: to the eye, the ear and the screen reader. */
  tell(taken: Pick<Taken, 'reading' | 'findings'>, target?: Target): void {
    const t = ladderWords();
    const why = taken.findings.map((f) => findingSays(f, taken.reading?.state === 'kept')).join(' ');
    if (!taken.reading) {
      this.result = { kind: 'not-taken', far: t.notTaken, why };
      sound('sent back');
    } else if (taken.reading.state === 'sent back') {
      this.result = { kind: 'sent-back', far: t.sentBack, why: said(taken.reading.reason) || why };
      sound('sent back');
    } else {
      const { far, full } = this.#keptWords(target);
      this.result = { kind: 'kept', far, why };
      sound(full ? 'full' : 'kept');
    }
    const next = this.ladder && farWords(this.ladder, targetOf(this.ladder, undefined), undefined, false);
    speak(`${this.result.far}. ${this.result.kind === 'kept' ? (next ?? '') : this.result.why}`);
    this.#host.requestUpdate();
  }

  #keptWords(target: Target | undefined): { readonly far: string; readonly full: boolean } {
    const t = ladderWords();
    if (!target || !this.ladder) return { far: t.kept, full: false };
    const rung = target.kind === 'rung' ? this.ladder.rungs.find((r) => r.id === target.rung.id) : undefined;
    if (rung?.done) return { far: t.full(rungName(rung)), full: true };
    const now = target.kind === 'rung' && rung ? { ...target, rung } : target;
    const { kept, wanted } = fullness(now, this.ladder);
    return { far: t.keptOf(num(kept, 0), num(Math.max(kept, wanted), 0)), full: false };
  }

  async #do(work: (ladder: Ladder) => Promise<Ladder>): Promise<void> {
    if (this.busy || !this.ladder) return;
    this.busy = true;
    this.refusal = '';
    this.question = undefined;
    this.#host.requestUpdate();
    try {
      this.ladder = await work(this.ladder);
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
      this.question = questionIn(cause);
      sound('sent back');
    } finally {
      this.busy = false;
      this.#host.requestUpdate();
    }
  }
}
