import type { Head } from '../../src/device/head/head.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { isDeviceFault } from '../../src/device/fault.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { PracticeSurface } from '../../src/device/practice/surfaces.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { Connect, Instrument } from '../api/instrument.ts';
import type { Finding } from '../api/words.ts';
import { conflict } from '../problem.ts';
import type { BenchReading, InstrumentOptions } from './bench-reading.ts';
import { BenchScale } from './bench-scale.ts';
import { judgeTile } from './check-tile.ts';
import { expose, exposeAfterPress, type TakenExposure } from './exposures.ts';
import { colourChannels, formOfHead } from './head-channels.ts';
import { HeadKeeper } from './head-keeper.ts';
import { lightFindings, refusedFinding } from './reading-findings.ts';
import { liveReading } from './live-reading.ts';
import { tileValues } from './tile-values.ts';
import { instrumentView, type StepMemory } from './instrument-view.ts';

const WHITE_EXPOSURES = 4;

/** The one instrument of the bench: at most one head at a time, one thing asked of it at a time. */
export class LiveInstrument {
  readonly #options: InstrumentOptions;
  #head: Head | undefined;
  readonly #keeper: HeadKeeper;
  #scale: BenchScale | undefined;
  #channels: number[] = [];
  #steps: StepMemory = {};
  #state: Instrument['state'] = 'none';
  #fault = '';
  #note: Finding | undefined;
  #kelvin: number | undefined;
  #busy = false;
  #block: number | undefined;
  #press: ((reading: Promise<BenchReading>) => void) | undefined;

  constructor(options: InstrumentOptions) {
    this.#options = options;
    this.#keeper = new HeadKeeper(options, {
      ready: (head, again) => this.#adopt(head, again),
      lost: (fault) => {
        this.#head = undefined;
        this.#fault = fault.message;
        this.#set('lost');
      },
    });
  }

  view(): Instrument {
    return instrumentView({
      state: this.#state,
      head: this.#head,
      practice: this.#keeper.practice,
      scale: this.#scale,
      steps: this.#steps,
      fault: this.#fault,
      note: this.#note,
      kelvin: this.#kelvin,
      channels: this.#channels,
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
      this.#fault = error instanceof Error ? error.message : String(error);
      this.#set('fault');
      throw error;
    }
    return this.view();
  }

  async disconnect(): Promise<Instrument> {
    this.#head = undefined;
    this.#scale = undefined;
    this.#note = undefined;
    this.#fault = '';
    await this.#keeper.disconnect();
    this.#set('none');
    return this.view();
  }

  async configure(gain: number, apertureMs: number): Promise<Instrument> {
    return this.#alone(async (head) => {
      await head.configure({ gain, apertureS: apertureMs / 1000 });
      this.#beginScale();
      return this.#ready();
    });
  }

  /** Dark by itself says only that the head is dark; every reading takes its own as well. */
  async readDark(): Promise<Instrument> {
    return this.#alone(async (head) => {
      const dark = await head.readDark();
      const share = Math.max(...this.#channels.map((i) => dark.counts[i]!)) / head.settings.fullScale;
      const good = share < 0.02;
      this.#step(
        'dark',
        good ? 'good' : 'refused',
        good
          ? `Dark: at most ${(100 * share).toFixed(2)} % of full scale.`
          : `With the lamp off the head still sees ${(100 * share).toFixed(1)} % of full scale, and 2 % is allowed; shade it and read the dark again.`,
      );
      return this.#ready();
    });
  }

  /** @param tile reflectance of the tile: one number, one per channel, or nothing known */
  async readWhiteTile(tile: number | readonly number[] | undefined): Promise<Instrument> {
    return this.#alone(async (head) => {
      const values = tileValues(tile, this.#channels, this.#keeper.practice);
      const exposures: TakenExposure[] = [];
      for (let n = 0; n < WHITE_EXPOSURES; n += 1) {
        // Afresh each time: one tilted placing is not to stand for the white.
        this.#keeper.practice?.place({ kind: 'white-tile' });
        exposures.push(await expose(head, this.#channels));
      }
      this.#kelvin = exposures.at(-1)!.light.kelvin;
      const signal = this.#scale!.takeWhite(
        exposures.map((e) => e.exposure),
        values.reflectance,
        this.#options.clock.now(),
        this.#kelvin,
      );
      const { gain, apertureS } = head.settings;
      const { channels } = this.#scale!.head;
      const kept = { signal: [...signal], atMs: this.#wallMs(), gain, apertureS, channels };
      const { block, finding, judged } = this.#options.blocks.take(this.#name(head), kept);
      this.#block = block;
      this.#note = finding ?? values.note;
      if (judged) this.#options.judged();
      this.#step('white tile', 'good', `White tile read ${WHITE_EXPOSURES} times.`);
      return this.#ready();
    });
  }

  async readBlackTrap(): Promise<Instrument> {
    return this.#alone(async (head) => {
      this.practice?.place({ kind: 'black-trap' });
      const taken = await expose(head, this.#channels);
      this.#scale!.takeTrap(taken.exposure);
      this.#step('black trap', 'good', 'Black trap read: the head’s own flare is taken out.');
      return this.#ready();
    });
  }

  async readCheckTile(): Promise<Instrument> {
    return this.#alone(async (head) => {
      if (!this.#scale!.hasWhite)
        throw conflict('The white tile is not read yet; read it, then the check tile.');
      this.#keeper.practice?.place({ kind: 'check-tile' });
      const taken = await expose(head, this.#channels);
      const { reflectance } = this.#scale!.calibrate(taken.exposure);
      const verdict = judgeTile(
        this.#options.tiles,
        this.#name(head),
        this.#scale!.head.channels,
        reflectance!,
      );
      this.#step('check tile', verdict.good ? 'good' : 'refused', verdict.sentence);
      return this.#ready();
    });
  }

  /** @throws DeviceFault; ReadingRefused where it is no reading */
  async read(place?: PracticeSurface): Promise<BenchReading> {
    return this.#alone(async (head) => {
      if (place) this.#keeper.practice?.place(place);
      return this.#finish(head, await expose(head, this.#channels));
    });
  }

  /** The head alone, for a test of itself; its settings are as they were afterwards. */
  async trial<T>(work: (head: Head, channels: readonly number[], name: string) => Promise<T>): Promise<T> {
    return this.#alone(async (head) => {
      const { gain, apertureS, averages } = head.settings;
      try {
        return await work(head, this.#channels, this.#name(head));
      } finally {
        if (head.isConnected) await head.configure({ gain, apertureS, averages });
      }
    });
  }

  /** Who is told of a press of the head's own button; one at a time. */
  onPress(listener: ((reading: Promise<BenchReading>) => void) | undefined): void {
    this.#press = listener;
  }

  /** The practice instrument in use, to lay swatches under. */
  get practice(): PracticeInstrument | undefined {
    return this.#keeper.practice;
  }

  /** The white tile is read and a head answers. @throws HttpProblem saying what to do first */
  holdReady(): void {
    if (!this.#head) throw this.#nothingThere();
    const cold = this.#scale?.isCold;
    if (cold) throw conflict(cold, '/problems/no-white');
    if (!this.#scale?.hasWhite) {
      throw conflict('The white tile is not read yet; read it on the Bench first.', '/problems/no-white');
    }
  }

  /** A head that is there, for the first time or again: a new object each time, so it is listened to afresh. */
  #adopt(head: Head, again: boolean): void {
    this.#head = head;
    this.#fault = '';
    this.#channels = colourChannels(head);
    if (again)
      this.#cold('The head is back, and its lamp may be cold; read the white tile before you go on.');
    else this.#beginScale();
    head.on('restarted', () =>
      this.#cold('The head restarted by itself and its lamp is cold; read the white tile before you go on.'),
    );
    head.on('press', (light) => this.#pressed(head, light));
    this.#set('ready');
    head.armButton().catch(() => undefined); // a head without a button refuses
  }

  /** The white before stays: the next one closes its block. */
  #cold(why: string): void {
    if (!this.#scale) return this.#beginScale();
    this.#scale.chill(why);
    this.#tell({ level: 'warning', code: 'restarted', sentence: why });
  }

  #beginScale(): void {
    const head = this.#head!;
    this.#scale = new BenchScale({
      channels: this.#channels.map((i) => head.channels[i]!.name),
      fullScale: head.settings.fullScale,
    });
    this.#steps = {};
    this.#note = undefined;
  }

  #finish(head: Head, taken: TakenExposure): BenchReading {
    this.#kelvin = taken.light.kelvin;
    const form = formOfHead(head);
    const findings = lightFindings(taken.light);
    const about = { at: this.#options.now(), channels: this.#channels.map((i) => head.channels[i]!), form };
    let calibrated;
    try {
      calibrated = this.#scale!.calibrate(taken.exposure);
    } catch (error) {
      if (error instanceof ReadingRefused) {
        const refused = refusedFinding(error);
        this.#options.read(
          liveReading(taken, { ...about, accepted: false, findings: [...findings, refused] }),
        );
      }
      throw error;
    }
    this.#scale!.countReading();
    const due = this.#scale!.whiteDue(this.#options.clock.now(), this.#kelvin);
    if (due) findings.push({ level: 'warning', code: 'white-due', sentence: due });
    const { reflectance } = calibrated;
    const live = liveReading(taken, { ...about, accepted: true, findings, reflectance });
    this.#options.read(live);
    this.#options.changed(this.view());
    return {
      source: this.#keeper.practice ? 'practice' : 'head',
      form,
      values: [...(reflectance ?? [])],
      raw: {
        instrument: this.#name(head),
        light: taken.exposure.light,
        dark: taken.exposure.dark,
        kelvin: taken.light.kelvin ?? null,
        block: this.#block ?? null,
        signal: [...calibrated.signal],
        atMs: this.#wallMs(),
        ...this.#scale!.record(),
      },
      live,
    };
  }

  #pressed(head: Head, light: HeadReading): void {
    if (this.#busy) return;
    const reading = this.#alone(async () =>
      this.#finish(head, await exposeAfterPress(head, light, this.#channels)),
    );
    if (this.#press) this.#press(reading);
    // Nobody waits for it: it is shown all the same, and a refusal is on the bench as a note.
    else reading.catch(() => undefined);
  }

  async #alone<T>(work: (head: Head) => Promise<T>): Promise<T> {
    const head = this.#head;
    if (!head) throw this.#nothingThere();
    if (this.#busy) throw conflict('The head is reading; wait until it has finished.', '/problems/busy');
    this.#busy = true;
    this.#set('reading');
    try {
      return await work(head);
    } catch (error) {
      if (isDeviceFault(error) || error instanceof ReadingRefused) {
        this.#note = refusedFinding(error);
      }
      throw error;
    } finally {
      this.#busy = false;
      if (this.#state === 'reading') this.#set('ready');
    }
  }

  #nothingThere(): Error {
    const sentence =
      this.#state === 'lost'
        ? `${this.#fault} It is found by itself once it is plugged in; everything read so far is kept.`
        : 'No instrument is connected; connect one on the Bench or type the reading in.';
    return conflict(sentence, '/problems/no-instrument');
  }

  #step(step: keyof StepMemory, state: 'good' | 'refused', sentence: string): void {
    this.#steps = { ...this.#steps, [step]: { state, sentence, at: this.#options.now() } };
  }

  #ready(): Instrument {
    this.#set('ready');
    return this.view();
  }

  #tell(note: Finding): void {
    this.#note = note;
    this.#options.changed(this.view());
  }

  #set(state: Instrument['state']): void {
    this.#state = state;
    this.#options.changed(this.view());
  }

  #wallMs(): number {
    return Date.parse(this.#options.now());
  }

  #name(head: Head): string {
    return `${head.identity.model} ${head.identity.serial}`;
  }
}
