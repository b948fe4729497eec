import { DeviceFault, isDeviceFault } from '../fault.ts';
import { sleep } from '../clock.ts';
import { parseNaturalNumber } from '../framing/number.ts';
import type { Question } from '../scpi/ask.ts';
import type { ScpiClient } from '../scpi/client.ts';
import { command, drainErrors } from '../scpi/error-queue.ts';
import { type ButtonWait, beginWait, endWait } from './button-wait.ts';
import type { HeadListeners } from './events.ts';
import type { HeadReading } from './reading.ts';
import { Repeating } from './repeating.ts';

const POLL_MS = 100;
/**
 * A head that does not count its presses is left alone this long between two waits: the contacts have settled by then
 * (20 ms in our own firmware), and a press from before the change has been noticed and forgotten.
 */
const QUIET_MS = 250;
const MEASURING = 1 << 4;
const WAITING = 1 << 5;

/** The presses up to here are accounted for; they belonged to `waitedFor`. */
interface Account {
  readonly presses: number | undefined;
  readonly waitedFor: unknown;
}

/**
 * Watches the head's own button. The head never speaks unasked: `INIT` makes it wait for the button, and the wait is
 * looked at ten times a second; when it has ended, `FETC?` brings the frame the press took.
 *
 * Each wait is begun for one purpose, and what ends it belongs to that purpose, however late it is noticed. Another
 * purpose gets a wait of its own: the message that begins it tells of any press that came before.
 */
export class ButtonWatch {
  readonly #client: ScpiClient;
  readonly #listeners: HeadListeners;
  readonly #fetchQuestion: (wait: ButtonWait) => Question<HeadReading>;
  readonly #counts: boolean;
  readonly #poll: Repeating;
  #tail: Promise<unknown> = Promise.resolve();
  #armed = false;
  #waitedFor: unknown;
  #wait: ButtonWait | undefined;
  #account: Account | undefined;
  /** `INIT` may have been heard and nothing has ended its wait as far as is known here. */
  #waiting = false;

  /** @param counts whether the head counts its presses (protocol 1.1) */
  constructor(
    client: ScpiClient,
    listeners: HeadListeners,
    counts: boolean,
    fetchQuestion: (wait: ButtonWait) => Question<HeadReading>,
  ) {
    this.#client = client;
    this.#listeners = listeners;
    this.#counts = counts;
    this.#fetchQuestion = fetchQuestion;
    this.#poll = new Repeating(client.line.clock, POLL_MS, () => this.#inTurn(() => this.#look()));
  }

  /** Resolves once the head waits for a press for this purpose, and no earlier press can count for it. */
  arm(waitedFor: unknown): Promise<void> {
    return this.#inTurn(async () => {
      if (this.#armed && this.#wait && this.#waitedFor === waitedFor) return;
      if (!this.#armed) {
        await command(this.#client, 'TRIG:SOUR EXT');
        this.#armed = true;
        this.#poll.start();
      }
      await this.#begin(waitedFor);
    });
  }

  disarm(): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#armed) return;
      this.stop();
      await command(this.#client, 'ABOR;:TRIG:SOUR IMM');
    });
  }

  stop(): void {
    this.#armed = false;
    this.#forgetWait();
    this.#account = undefined;
    this.#poll.stop();
  }

  /** A reading by the program ends the wait. @returns whether a press may have taken a frame unseen */
  readingEndsWait(): boolean {
    const waited = this.#waiting;
    this.#forgetWait();
    return waited;
  }

  /** The head restarted: whatever it waited for and counted is forgotten. */
  restarted(): void {
    this.#forgetWait();
    this.#account = undefined;
  }

  #forgetWait(): void {
    this.#wait = undefined;
    this.#waiting = false;
  }

  /** Looking and beginning anew never overlap. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#tail.then(work, work);
    this.#tail = result.catch(() => undefined);
    return result;
  }

  /** Should it fail, no wait is known any more: the next look begins one for the same purpose. */
  async #begin(waitedFor: unknown): Promise<void> {
    const before = this.#wait;
    const account = this.#account;
    const anew = account === undefined || account.waitedFor !== waitedFor;
    this.#waitedFor = waitedFor;
    this.#wait = undefined;
    if (anew && !this.#counts) {
      const frame = await this.#client.ask(endWait);
      this.#waiting = false;
      if (before && account && frame !== before.frame) this.#tellSetAside(account);
      await sleep(this.#client.line.clock, QUIET_MS);
      if (!this.#armed) return;
    }
    this.#waiting = true;
    const presses = await beginWait(this.#client, this.#counts, (wait) => {
      this.#wait = wait;
    });
    if (anew && this.#counts && account && presses !== account.presses) this.#tellSetAside(account);
    this.#account = { presses, waitedFor };
  }

  #tellSetAside({ waitedFor }: Account): void {
    this.#listeners.emit('press-set-aside', { waitedFor });
  }

  async #look(): Promise<void> {
    if (!this.#armed) return;
    try {
      const wait = this.#wait;
      if (!wait) return await this.#begin(this.#waitedFor);
      const state = await this.#client.ask({ send: 'STAT:OPER:COND?', read: readRegister });
      if (!this.#armed || this.#wait !== wait || (state & (WAITING | MEASURING)) !== 0) return;
      this.#forgetWait();
      await this.#fetch(wait, this.#waitedFor);
    } catch (error) {
      if (!isDeviceFault(error)) throw error; // faults of the line show in whatever is asked next
    }
  }

  async #fetch(wait: ButtonWait, waitedFor: unknown): Promise<void> {
    const presses = wait.presses === undefined ? undefined : (wait.presses + 1) % 65_536;
    this.#account = { presses, waitedFor };
    try {
      const reading = await this.#client.ask(this.#fetchQuestion(wait));
      this.#listeners.emit('press', { ...reading, waitedFor });
    } catch (error) {
      if (!isDeviceFault(error)) throw error;
      await drainErrors(this.#client);
      this.#listeners.emit('press-failed', { fault: error, waitedFor });
    }
  }
}

function readRegister(answer: string): number {
  const register = parseNaturalNumber(answer);
  if (register === undefined)
    throw new DeviceFault('frame', { asked: 'STAT:OPER:COND?', seen: `"${answer}"` });
  return register;
}
