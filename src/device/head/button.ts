import { DeviceFault, isDeviceFault } from '../fault.ts';
import { parseNaturalNumber } from '../framing/number.ts';
import type { Question } from '../scpi/ask.ts';
import type { ScpiClient } from '../scpi/client.ts';
import { command, drainErrors } from '../scpi/error-queue.ts';
import type { HeadListeners } from './events.ts';
import type { HeadReading } from './reading.ts';
import { Repeating } from './repeating.ts';

const POLL_MS = 100;
const MEASURING = 1 << 4;
const WAITING = 1 << 5;

/**
 * Watches the head's own button. The head never speaks unasked: `INIT` makes it wait for the button, and the wait is
 * looked at ten times a second; when it has ended, `FETC?` brings the frame the press took.
 */
export class ButtonWatch {
  readonly #client: ScpiClient;
  readonly #listeners: HeadListeners;
  readonly #fetchQuestion: () => Question<HeadReading>;
  readonly #poll: Repeating;
  #armed = false;
  /** `INIT` was sent and nothing has ended its wait as far as is known here. */
  #waiting = false;

  constructor(client: ScpiClient, listeners: HeadListeners, fetchQuestion: () => Question<HeadReading>) {
    this.#client = client;
    this.#listeners = listeners;
    this.#fetchQuestion = fetchQuestion;
    this.#poll = new Repeating(client.line.clock, POLL_MS, () => this.#look());
  }

  async arm(): Promise<void> {
    if (this.#armed) return;
    await command(this.#client, 'TRIG:SOUR EXT');
    this.#armed = true;
    await this.#wait();
    this.#poll.start();
  }

  async disarm(): Promise<void> {
    if (!this.#armed) return;
    this.stop();
    await command(this.#client, 'ABOR;:TRIG:SOUR IMM');
  }

  stop(): void {
    this.#armed = false;
    this.#waiting = false;
    this.#poll.stop();
  }

  /** A reading by the program ends the wait. @returns whether a press may have taken a frame unseen */
  readingEndsWait(): boolean {
    const waited = this.#waiting;
    this.#waiting = false;
    return waited;
  }

  /** The head restarted: whatever it waited for is forgotten. */
  restarted(): void {
    this.#waiting = false;
  }

  async #wait(): Promise<void> {
    // Said before it is sent: a reading by the program that comes right behind would else be taken for a press.
    this.#waiting = true;
    try {
      await command(this.#client, 'ABOR;:TRIG:SOUR EXT;:INIT');
    } catch (error) {
      this.#waiting = false;
      throw error;
    }
  }

  async #look(): Promise<void> {
    try {
      if (!this.#waiting) return await this.#wait();
      const state = await this.#client.ask({ send: 'STAT:OPER:COND?', read: readRegister });
      if (!this.#armed || !this.#waiting || (state & (WAITING | MEASURING)) !== 0) return;
      this.#waiting = false;
      await this.#fetch();
    } catch (error) {
      if (!isDeviceFault(error)) throw error; // faults of the line show in whatever is asked next
    }
  }

  async #fetch(): Promise<void> {
    try {
      this.#listeners.emit('press', await this.#client.ask(this.#fetchQuestion()));
    } catch (error) {
      if (!isDeviceFault(error)) throw error;
      await drainErrors(this.#client);
      this.#listeners.emit('press-failed', error);
    }
  }
}

function readRegister(answer: string): number {
  const register = parseNaturalNumber(answer);
  if (register === undefined)
    throw new DeviceFault('frame', { asked: 'STAT:OPER:COND?', seen: `"${answer}"` });
  return register;
}
