import { whitePoint } from '../../colour/white-point.ts';
import { sleep } from '../clock.ts';
import type { Clock } from '../clock.ts';
import { nextFrameNumber } from '../framing/frame.ts';
import { defineCommands } from './commands.ts';
import { ExposureSettings } from './exposure-settings.ts';
import { FLUX, PRACTICE_TRAITS, PracticeLight } from './light.ts';
import type { PracticeTraits } from './light.ts';
import { ScpiDesk } from './scpi-desk.ts';
import { nr3, queuedError } from './scpi-words.ts';
import { SeededNoise } from './seeded-noise.ts';
import { practiceSensor } from './sensor.ts';
import type { PracticeSensor, PracticeVariant } from './sensor.ts';
import type { PracticeSurface } from './surfaces.ts';

export interface PracticeOptions {
  readonly variant?: PracticeVariant;
  /** The same seed gives the same session. Default 1. */
  readonly seed?: number;
  readonly serial?: string;
  readonly traits?: Partial<PracticeTraits>;
  /** Whether the head has checksums. Default `true`. */
  readonly checksums?: boolean;
}

/**
 * The instrument inside the practice head: a sensor, a lamp, settings, and a desk that answers SCPI. It knows no
 * transport; practice-head.ts puts it on a line.
 */
export class PracticeInstrument {
  readonly sensor: PracticeSensor;
  readonly settings = new ExposureSettings();
  readonly serial: string;
  readonly checksums: boolean;
  desk!: ScpiDesk;
  waitingForButton = false;
  /** Presses of the button since power-on, whether waited for or not. */
  presses = 0;
  measuring = false;
  lastFrame: string | undefined;
  readonly #clock: Clock;
  readonly #light: PracticeLight;
  readonly #noise: SeededNoise;
  #frame = 0;
  #poweredAt = 0;
  /** How often it began to wait for the button. */
  #waits = 0;
  #work: Promise<unknown> = Promise.resolve();

  constructor(clock: Clock, options: PracticeOptions = {}) {
    this.sensor = practiceSensor(options.variant ?? 'bands-8');
    this.serial = options.serial ?? 'PRACTICE';
    this.checksums = options.checksums ?? true;
    this.#clock = clock;
    this.#noise = new SeededNoise(options.seed ?? 1);
    this.#light = new PracticeLight(this.sensor, this.#noise, { ...PRACTICE_TRAITS, ...options.traits });
    this.powerOn();
  }

  /** Power-on: settings, queue, checksum and frame numbers begin anew, and the lamp is cold. */
  powerOn(): void {
    this.desk = new ScpiDesk();
    defineCommands(this);
    this.reset();
    this.#frame = 0;
    this.presses = 0;
    this.#poweredAt = this.#clock.now();
  }

  /** `*RST`. */
  reset(): void {
    this.settings.reset();
    this.waitingForButton = false;
    this.lastFrame = undefined;
  }

  get surface(): PracticeSurface {
    return this.#light.surface;
  }

  place(surface: PracticeSurface): void {
    this.#light.place(surface);
  }

  setTraits(traits: Partial<PracticeTraits>): void {
    this.#light.setTraits(traits);
  }

  get settling(): boolean {
    return this.#light.isSettling(this.#seconds());
  }

  kelvin(): number {
    return 296 + 4 * (1 - Math.exp(-this.#seconds() / 300)) + 0.02 * this.#noise.normal();
  }

  /** Number of the last frame taken, 0 before the first one. */
  get frameNumber(): number {
    return this.#frame;
  }

  /** Takes one frame: waits for the passes, then counts. */
  async takeFrame(lamp: boolean): Promise<string> {
    this.waitingForButton = false;
    const counts = await this.expose(lamp);
    const { settings } = this;
    let flags = (lamp ? 0 : 4) | (this.settling ? 8 : 0);
    const fields = counts.map((count, i) => {
      if (count < settings.fullScale) return String(count);
      flags |= 1;
      this.desk.queue(queuedError(510, this.sensor.channels[i]?.name));
      return '9.9E37';
    });
    this.#frame = this.#frame === 0 ? 1 : nextFrameNumber(this.#frame);
    const head = [
      this.#frame,
      flags,
      settings.gain,
      nr3(settings.apertureS),
      lamp ? 1 : 0,
      nr3(this.kelvin()),
    ];
    this.lastFrame = [...head, fields.length, ...fields].join(',');
    return this.lastFrame;
  }

  /** Counts of one exposure, without a frame around them. */
  async expose(lamp: boolean): Promise<number[]> {
    const { gain, apertureS, averages } = this.settings;
    this.measuring = true;
    await sleep(this.#clock, this.sensor.passes * apertureS * averages * 1000);
    this.measuring = false;
    return this.#light.counts({
      gain,
      apertureMs: apertureS * 1000,
      averages,
      lamp,
      seconds: this.#seconds(),
    });
  }

  /** X, Y, Z of the present surface by the head's own factory matrix (D65, 10 degrees; Y = 100 for white). */
  async factoryXyz(): Promise<number[]> {
    const counts = await this.expose(true);
    const { gain, apertureS } = this.settings;
    const white = whitePoint('D65/10deg');
    return [white.X, white.Y, white.Z].map((whiteValue, i) => {
      const perfect = FLUX * gain * apertureS * 1000 * (this.sensor.channels[i]?.strength ?? 1);
      return (whiteValue * (counts[i] ?? 0)) / perfect;
    });
  }

  /** One program message, when everything before it is done: a head does one thing at a time. */
  execute(message: string): Promise<string | undefined> {
    return this.#inTurn(() => this.desk.execute(message));
  }

  /** `INIT` with the button as its trigger. */
  awaitButton(): void {
    this.waitingForButton = true;
    this.#waits++;
  }

  /** The button on the head. Takes a frame only where the head waited for it when it was pressed, and still does. */
  press(): Promise<void> {
    this.presses = (this.presses + 1) % 65_536;
    const wait = this.waitingForButton ? this.#waits : undefined;
    return this.#inTurn(async () => {
      if (this.waitingForButton && this.#waits === wait) await this.takeFrame(true);
    });
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#work.then(work, work);
    this.#work = result.catch(() => undefined);
    return result;
  }

  #seconds(): number {
    return (this.#clock.now() - this.#poweredAt) / 1000;
  }
}
