import type { ButtonTarget } from '../api/button.ts';
import type { Bench } from '../bench.ts';
import type { BenchReading } from '../instrument/bench-reading.ts';
import { practiceRung } from '../instrument/practice-swatch.ts';
import { holdOpen, keepReading, rungOf } from '../ladder/deeds.ts';
import { openLadder, type OpenLadder, type OpenRung } from '../ladder/open-ladder.ts';
import { notFound } from '../problem.ts';
import { problemOf } from '../problem-of.ts';
import { readingView } from '../views/reading-view.ts';
import { say } from '../api/sentences/ladders.ts';

type Parts = Pick<Bench, 'db' | 'now' | 'events' | 'instrument'>;

/** The head's own button: what a press reads, and what becomes of the reading. */
export class ByButton {
  readonly #bench: Parts;
  #target: ButtonTarget | undefined;

  constructor(bench: Parts) {
    this.#bench = bench;
    bench.instrument.onPress((reading) => void this.#pressed(reading));
  }

  /** @throws HttpProblem where there is no such ladder or rung, or it was put aside */
  aim(target: ButtonTarget): void {
    const { ladder, rung } = this.#find(target);
    holdOpen(ladder);
    this.#target = target;
    const { practice } = this.#bench.instrument;
    if (practice) practice.place(practiceRung(this.#bench.db, ladder, rung));
  }

  free(): void {
    this.#target = undefined;
  }

  #find({ ladderId, on }: ButtonTarget): { readonly ladder: OpenLadder; readonly rung: OpenRung } {
    const ladder = openLadder(this.#bench.db, ladderId);
    if ('rungId' in on) return { ladder, rung: rungOf(ladder, on.rungId) };
    const card = ladder.cards.find((c) => c.row.side === on.side);
    if (!card) throw notFound(say('no-card-films'));
    return { ladder, rung: card };
  }

  /** The target of the moment of the press: the page may move on while the head still reads. */
  async #pressed(reading: Promise<BenchReading>): Promise<void> {
    const target = this.#target;
    const { db, events, now } = this.#bench;
    if (!target) {
      // Nobody waits for it: it is shown all the same, and a refusal is on the bench as a note.
      await reading.catch(() => undefined);
      return;
    }
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
