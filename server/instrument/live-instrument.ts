import type { Head } from '../../src/device/head/head.ts';
import { isDeviceFault } from '../../src/device/fault.ts';
import type { ButtonReading } from '../../src/device/head/events.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { PracticeSurface } from '../../src/device/practice/surfaces.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { Connect, Instrument } from '../api/instrument.ts';
import type { Finding } from '../api/words.ts';
import { conflict } from '../problem.ts';
import { gainStepsOf } from '../store/head-tests.ts';
import type { BenchReading, InstrumentOptions } from './bench-reading.ts';
import { expose, exposeAfterPress } from './exposures.ts';
import { gainChain } from './gain-chain.ts';
import { HeadKeeper } from './head-keeper.ts';
import { HeadSession } from './head-session.ts';
import { instrumentView } from './instrument-view.ts';
import { refusedFinding } from './reading-findings.ts';
import { makeReading } from './take-reading.ts';
import { say } from '../api/sentences/instrument.ts';

/** Who is told of presses of the head's own button. */
export interface PressListener {
  /** @param armedFor what the button was armed for when it was pressed */
  readonly pressed: (reading: Promise<BenchReading>, armedFor: unknown) => void;
  /** A press that came before the button was armed for what it is now. It read nothing. */
  readonly setAside: () => void;
}

/** The one instrument of the bench: at most one head at a time, one thing asked of it at a time. */
export class LiveInstrument {
  readonly #options: InstrumentOptions;
  readonly #keeper: HeadKeeper;
  #session: HeadSession | undefined;
  /** Its cable is in. */
  #there = false;
  #state: Instrument['state'] = 'none';
  #fault = '';
  #waiting = '';
  #busy = false;
  #presses: PressListener | undefined;
  /** What the head's own button is armed for. */
  #armedFor: unknown;

  constructor(options: InstrumentOptions) {
    this.#options = options;
    this.#keeper = new HeadKeeper(options, {
      ready: (head, again) => this.#adopt(head, again),
      waiting: (fault) => {
        this.#waiting = fault.message;
        this.#set('connecting');
      },
      lost: (fault) => {
        this.#there = false;
        this.#fault = fault.message;
        this.#set('lost');
      },
    });
  }

  view(): Instrument {
    const session = this.#session;
    return instrumentView({
      state: this.#state,
      head: this.#there ? session?.head : undefined,
      practice: this.#keeper.practice,
      transport: this.#keeper.transport,
      session,
      fault: this.#fault,
      waiting: this.#waiting,
      nowMs: this.#options.clock.now(),
    });
  }

  /** Connects a head, letting go of the one before. @throws DeviceFault, HttpProblem */
  async connect(wanted: Required<Connect> | Connect): Promise<Instrument> {
    await this.disconnect();
    this.#set('connecting');
    try {
      await this.#keeper.connect(wanted);
    } catch (error) {
      // Let go of while it was waited for: that is no fault, and has been said already.
      if (this.#state !== 'connecting') throw conflict(say('not-waited-for'), '/problems/let-go');
      this.#fault = error instanceof Error ? error.message : String(error);
      this.#set('fault');
      throw error;
    }
    return this.view();
  }

  /** Lets go of the head, or of waiting for one. */
  async disconnect(): Promise<Instrument> {
    this.#there = false;
    this.#session = undefined;
    this.#fault = '';
    this.#waiting = '';
    this.#set('none');
    await this.#keeper.disconnect();
    return this.view();
  }

  /** A gain that measured steps lead to keeps white and trap; anything else begins anew. */
  async configure(gain: number, apertureMs: number): Promise<Instrument> {
    return this.set(async (session) => {
      const { head, scale, channelNames, name } = session;
      const { apertureS } = head.settings;
      const set = await head.configure({ gain, apertureS: apertureMs / 1000 });
      const sameTime = Math.abs(set.apertureS - apertureS) <= 1e-4 * apertureS;
      const steps = gainStepsOf(this.#options.db, name);
      const ratios = sameTime ? gainChain(steps, scale.gain, set.gain, channelNames) : undefined;
      if (!ratios || !scale.hasWhite) return session.beginScale();
      session.placings = {};
      scale.regain(set.gain === scale.gain ? undefined : ratios);
      session.note = {
        level: 'note',
        code: 'gain-kept',
        sentence: say('gain-measured', { to: set.gain, from: scale.gain }),
      };
    });
  }

  /** One step of setting the head. @throws DeviceFault, ReadingRefused, HttpProblem */
  async set(work: (session: HeadSession, options: InstrumentOptions) => Promise<void>): Promise<Instrument> {
    await this.alone((session) => work(session, this.#options));
    return this.view();
  }

  /** @throws DeviceFault; ReadingRefused where it is no reading */
  async read(place?: PracticeSurface): Promise<BenchReading> {
    return this.alone(async (session) => {
      if (place) session.practice?.place(place);
      return makeReading(session, this.#options, await expose(session.head, session.channels));
    });
  }

  /** The head alone, for a test of itself that changes its settings; they are as they were afterwards. */
  async trial<T>(work: (session: HeadSession) => Promise<T>): Promise<T> {
    return this.alone(async (session) => {
      const { head } = session;
      const { gain, apertureS, averages } = head.settings;
      try {
        return await work(session);
      } finally {
        if (head.isConnected) await head.configure({ gain, apertureS, averages });
      }
    });
  }

  /** Who is told of a press of the head's own button; one at a time. */
  onPress(listener: PressListener | undefined): void {
    this.#presses = listener;
  }

  /** Arms the head's own button for something. Once this resolves no press from before can count for it. */
  async armButton(armedFor: unknown): Promise<void> {
    this.#armedFor = armedFor;
    await this.#arm();
  }

  /** A head without a button refuses; one whose line fails is armed by the next look at it, or tells that it is gone. */
  async #arm(): Promise<void> {
    try {
      await this.session?.head.armButton(this.#armedFor);
    } catch (error) {
      if (!isDeviceFault(error)) throw error;
    }
  }

  /** A note on the bench. */
  tell(note: Finding): void {
    if (this.#session) this.#session.note = note;
    this.#options.changed(this.view());
  }

  /** The practice instrument in use, to lay swatches under. */
  get practice(): PracticeInstrument | undefined {
    return this.#keeper.practice;
  }

  /** The head in use and what it is set on; undefined without one, or while its cable is out. */
  get session(): HeadSession | undefined {
    return this.#there ? this.#session : undefined;
  }

  /** @throws HttpProblem where no head is connected */
  holdSession(): HeadSession {
    if (!this.session) throw this.#nothingThere();
    return this.session;
  }

  /** The white tile is read and a head answers. @throws HttpProblem saying what to do first */
  holdReady(): void {
    const { scale } = this.holdSession();
    if (scale.isCold) throw conflict(scale.isCold, '/problems/no-white');
    if (!scale.hasWhite) {
      throw conflict(say('white-first'), '/problems/no-white');
    }
  }

  /** A head that is there, for the first time or again: a new object each time, so it is listened to afresh. */
  #adopt(head: Head, again: boolean): void {
    this.#there = true;
    this.#fault = '';
    this.#waiting = '';
    if (again && this.#session) {
      this.#session.head = head;
      this.#cold(say('head-back'));
    } else this.#session = new HeadSession(head, this.#keeper.practice);
    head.on('restarted', () => this.#cold(say('head-restarted')));
    head.on('press', (light) => this.#pressed(light));
    head.on('press-failed', ({ fault, waitedFor }) => this.#handOn(Promise.reject(fault), waitedFor));
    head.on('press-set-aside', () => this.#presses?.setAside());
    this.#set('ready');
    void this.#arm();
  }

  /** The white before stays: the next one closes its block. */
  #cold(why: string): void {
    this.#session?.scale.chill(why);
    this.tell({ level: 'warning', code: 'restarted', sentence: why });
  }

  #pressed(light: ButtonReading): void {
    const reading = this.alone(async (session) => {
      try {
        return makeReading(
          session,
          this.#options,
          await exposeAfterPress(session.head, light, session.channels),
        );
      } finally {
        await this.#arm(); // before anybody is told of this press: the next one counts then
      }
    });
    this.#handOn(reading, light.waitedFor);
  }

  #handOn(reading: Promise<BenchReading>, armedFor: unknown): void {
    // Where nobody waits for it, it is shown all the same, and a refusal is on the bench as a note.
    reading.catch(() => undefined);
    this.#presses?.pressed(reading, armedFor);
  }

  /** Asks the head one thing while nobody else does. @throws DeviceFault, HttpProblem, and those of `work` */
  async alone<T>(work: (session: HeadSession) => Promise<T>): Promise<T> {
    const session = this.holdSession();
    if (this.#busy) throw conflict(say('busy'), '/problems/busy');
    this.#busy = true;
    this.#set('reading');
    try {
      return await work(session);
    } catch (error) {
      if (isDeviceFault(error) || error instanceof ReadingRefused) session.note = refusedFinding(error);
      throw error;
    } finally {
      this.#busy = false;
      if (this.#state === 'reading') this.#set('ready');
    }
  }

  #nothingThere(): Error {
    const sentence = this.#state === 'lost' ? say('lost', { fault: this.#fault }) : say('no-instrument');
    return conflict(sentence, '/problems/no-instrument');
  }

  #set(state: Instrument['state']): void {
    this.#state = state;
    this.#options.changed(this.view());
  }
}
