import { closeBlock } from '../../src/calibrate/reading/block.ts';
import { type WhiteReading, whiteChange } from '../../src/calibrate/reading/white-bracket.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { Finding } from '../api/words.ts';
import { addBlockVerdict, openBlockReadings, type OpenBlockReading } from '../store/block-verdicts.ts';
import { addCalibration, calibrationsOf } from '../store/calibrations.ts';
import type { Db } from '../store/open-store.ts';
import { say } from '../api/sentences/instrument.ts';

/** A white as it is kept. Times are ms since 1970, so that a block can be closed after a restart. */
export interface KeptWhite {
  readonly signal: readonly number[];
  readonly atMs: number;
  readonly gain: number;
  readonly apertureS: number;
  readonly channels: readonly string[];
}

export interface TakenWhite {
  /** Names the block that this white opens. */
  readonly block: number;
  /** What became of the readings before it, where there were any. */
  readonly finding: Finding | undefined;
  /** Verdicts were added. */
  readonly judged: boolean;
  /** The block it closed well, if any. */
  readonly closed: ClosedBlock | undefined;
}

export interface ClosedBlock {
  /** Largest relative change of a channel from one white to the other. */
  readonly change: number;
  readonly readings: number;
}

interface Outcome {
  readonly finding: Finding | undefined;
  readonly judged: boolean;
  readonly closed?: ClosedBlock;
}

interface RawReading {
  readonly block: number;
  readonly signal: readonly number[];
  readonly atMs: number;
  readonly trap: readonly number[] | null;
  readonly tile: readonly number[];
}

/**
 * Blocks of readings between two whites. The white after a block works its readings out again against the white
 * between the two, or, where the two differ too much twice running, sends them back with the reason. Nothing is
 * changed or deleted: verdicts are added.
 */
export class WhiteBlocks {
  readonly #db: Db;
  readonly #now: () => string;

  constructor(db: Db, now: () => string) {
    this.#db = db;
    this.#now = now;
  }

  /** Keeps a white and closes the blocks before it. */
  take(instrument: string, white: KeptWhite): TakenWhite {
    return this.#db.transaction((): TakenWhite => {
      const open = openBlockReadings(this.#db, instrument);
      const before = calibrationsOf(this.#db, instrument, 'white tile');
      addCalibration(this.#db, instrument, 'white tile', white, this.#now());
      const block = calibrationsOf(this.#db, instrument, 'white tile').at(-1)!.seq;
      let finding: Finding | undefined;
      let judged = false;
      let closed: ClosedBlock | undefined;
      const blocks = new Map<number, OpenBlockReading[]>();
      for (const reading of open) {
        const { block: of } = JSON.parse(reading.raw) as RawReading;
        blocks.set(of, [...(blocks.get(of) ?? []), reading]);
      }
      for (const [seq, readings] of blocks) {
        const opening = before.find((row) => row.seq === seq);
        if (!opening) continue;
        const tries = before.filter((row) => row.seq > seq).length;
        const outcome = this.#close(JSON.parse(opening.body) as KeptWhite, readings, white, tries > 0);
        finding = outcome.finding;
        judged ||= outcome.judged;
        closed = outcome.closed ?? closed;
      }
      return { block, finding, judged, closed };
    })();
  }

  /** How many of these readings wait for the white that closes their block. */
  waiting(instrument: string, readingIds: ReadonlySet<string>): number {
    return openBlockReadings(this.#db, instrument).filter(({ id }) => readingIds.has(id)).length;
  }

  #close(
    opening: KeptWhite,
    readings: readonly OpenBlockReading[],
    white: KeptWhite,
    second: boolean,
  ): Outcome {
    const many = `${readings.length} ${readings.length === 1 ? 'reading' : 'readings'}`;
    const sendBack = (reason: string): Outcome => {
      for (const { id } of readings) this.#judge(id, { accepted: false, reason, values: undefined });
      const sentence = say('block-sent-back', { reason, many, are: readings.length === 1 ? 'is' : 'are' });
      return { finding: { level: 'warning', code: 'white-drift', sentence }, judged: true };
    };
    if (
      opening.gain !== white.gain ||
      opening.apertureS !== white.apertureS ||
      opening.channels.join() !== white.channels.join()
    ) {
      return sendBack(say('set-differently'));
    }
    let closed: Float64Array[];
    try {
      closed = readings.map(({ raw }) => {
        const { signal, atMs, trap, tile } = JSON.parse(raw) as RawReading;
        const reading = { signal: Float64Array.from(signal), atMs };
        const scale = { trap: trap ? Float64Array.from(trap) : new Float64Array(signal.length), tile };
        return closeBlock(whiteOf(opening), [reading], whiteOf(white), scale, white.channels)[0]!;
      });
    } catch (error) {
      if (!(error instanceof ReadingRefused)) throw error;
      if (second) return sendBack(error.message);
      const sentence = say('read-white-first', { reason: error.message, many });
      return { finding: { level: 'warning', code: 'white-drift', sentence }, judged: false };
    }
    readings.forEach(({ id }, i) => this.#judge(id, { accepted: true, reason: '', values: [...closed[i]!] }));
    const { change } = whiteChange(whiteOf(opening), whiteOf(white));
    return { finding: undefined, judged: true, closed: { change, readings: readings.length } };
  }

  #judge(id: string, verdict: Parameters<typeof addBlockVerdict>[2]): void {
    addBlockVerdict(this.#db, id, verdict, this.#now());
  }
}

const whiteOf = ({ signal, atMs }: KeptWhite): WhiteReading => ({ signal: Float64Array.from(signal), atMs });
