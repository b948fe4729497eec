import { isDeepStrictEqual } from 'node:util';
import type { ButtonTarget } from '../api/button.ts';
import type { Bench } from '../bench.ts';
import type { BenchReading } from '../instrument/bench-reading.ts';
import { practiceRung } from '../instrument/practice-swatch.ts';
import { holdOpen, keepReading, rungOf } from '../ladder/deeds.ts';
import { openLadder, type OpenLadder, type OpenRung } from '../ladder/open-ladder.ts';
import { conflict, notFound } from '../problem.ts';
import { problemOf } from '../problem-of.ts';
import { readingView } from '../views/reading-view.ts';
import { say as sayHead } from '../api/sentences/instrument.ts';
import { say } from '../api/sentences/ladders.ts';

type Parts = Pick<Bench, 'db' | 'now' | 'events' | 'instrument'>;

/**
 * The head's own button: what a press reads, and what becomes of the reading. The button is armed for a target; a press
 * belongs to the target it was armed for, whatever has become the target since.
 */
export class ByButton {
  readonly #bench: Parts;
  #target: ButtonTarget | undefined;

  constructor(bench: Parts) {
    this.#bench = bench;
    bench.instrument.onPress({
      pressed: (reading, armedFor) => void this.#pressed(reading, armedFor as ButtonTarget | undefined),
      setAside: () => this.#setAside(),
    });
  }

  /**
   * Resolves once a press counts for the target, and none from before can.
   * @throws HttpProblem where there is no such ladder or rung, or it was put aside
   */
  async aim(target: ButtonTarget): Promise<void> {
    holdOpen(this.#find(target).ladder);
    // The same again, from another page, is no change: a press made for it counts.
    if (!isDeepStrictEqual(target, this.#target)) this.#target = target;
    await this.#bench.instrument.armButton(this.#target);
  }

  async free(): Promise<void> {
    if (!this.#target) return;
    this.#target = undefined;
    await this.#bench.instrument.armButton(undefined);
  }

  /** Lays the practice head on the target and presses its button. @throws HttpProblem where it is not in use */
  async pressPractice(): Promise<void> {
    const { practice } = this.#bench.instrument;
    if (!practice) throw conflict(sayHead('practice-not-in-use'));
    if (this.#target) {
      const { ladder, rung } = this.#find(this.#target);
      practice.place(practiceRung(this.#bench.db, ladder, rung));
    }
    await practice.press();
  }

  #find({ ladderId, on }: ButtonTarget): { readonly ladder: OpenLadder; readonly rung: OpenRung } {
    const ladder = openLadder(this.#bench.db, ladderId);
    if ('rungId' in on) return { ladder, rung: rungOf(ladder, on.rungId) };
    const card = ladder.cards.find((c) => c.row.side === on.side);
    if (!card) throw notFound(say('no-card-films'));
    return { ladder, rung: card };
  }

  #setAside(): void {
    const sentence = sayHead('press-set-aside');
    const note = { level: 'refused' as const, code: 'press-set-aside', sentence };
    if (!this.#target) return this.#bench.instrument.tell(note);
    const { ladderId, on } = this.#target;
    const rungId = 'rungId' in on ? on.rungId : null;
    this.#bench.events.send({ type: 'taken', ladderId, rungId, reading: null, findings: [note] });
  }

  /** @param target what the button was armed for: the page may move on while the head still reads */
  async #pressed(reading: Promise<BenchReading>, target: ButtonTarget | undefined): Promise<void> {
    const { db, events, now } = this.#bench;
    if (!target) return;
    const { ladderId, over } = target;
    const rungId = 'rungId' in target.on ? target.on.rungId : null;
    try {
      const { live, source, form, values, raw } = await reading;
      this.#bench.instrument.holdReady();
      const { ladder, rung } = this.#find(target);
      holdOpen(ladder);
      const id = keepReading(db, { ladderId }, rung.row.id, over, { source, form, values, raw }, now());
      const { rung: after } = this.#find(target);
      const kept = readingView(after.readings.find((r) => r.row.id === id)!);
      const findings = [...live.findings];
      if (kept.state === 'sent back') {
        findings.push({ level: 'warning', code: 'sent-back', sentence: kept.reason });
      }
      events.send({ type: 'taken', ladderId, rungId, reading: kept, findings });
      events.send({ type: 'ladder', ladderId });
    } catch (error) {
      const sentence = problemOf(error)?.message ?? say('press-failed');
      const findings = [{ level: 'refused' as const, code: 'not-taken', sentence }];
      events.send({ type: 'taken', ladderId, rungId, reading: null, findings });
    }
  }
}
