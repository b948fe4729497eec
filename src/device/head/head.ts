import { DeviceFault, isDeviceFault } from '../fault.ts';
import { parsePlainNumber } from '../framing/number.ts';
import type { Question } from '../scpi/ask.ts';
import type { ScpiClient } from '../scpi/client.ts';
import type { QueryLine } from '../scpi/query-line.ts';
import { command, drainErrors } from '../scpi/error-queue.ts';
import { ButtonWatch } from './button.ts';
import type { Channel } from './channels.ts';
import { readCondition } from './condition.ts';
import type { HeadCondition } from './condition.ts';
import { HeadListeners } from './events.ts';
import type { HeadEvents } from './events.ts';
import { FrameNumbers } from './frame-numbers.ts';
import { checkIdentity, startChecksums, wantOne } from './handshake.ts';
import type { HeadDescription, HeadGeometry, HeadKind } from './handshake.ts';
import { countsPresses } from './identity.ts';
import type { HeadIdentity } from './identity.ts';
import { takeReading } from './reading.ts';
import type { HeadReading } from './reading.ts';
import { Repeating } from './repeating.ts';
import { applySettings, frameTimeoutMs } from './settings.ts';
import type { HeadLimits, HeadSettings, WantedSettings } from './settings.ts';
import { readTristimulus } from './tristimulus.ts';
import type { TristimulusReading } from './tristimulus.ts';

/** What connectHead hands over. */
export interface HeadParts {
  readonly client: ScpiClient;
  readonly identity: HeadIdentity;
  readonly description: HeadDescription;
  readonly settings: HeadSettings;
  readonly checksum: boolean;
  readonly heartbeatMs: number;
}

/**
 * One connected head. Made by `connectHead`. Gives raw counts and the settings they were taken with; dark, white and
 * everything after them belong to src/calibrate. Finished once `down` was told or `close` was called.
 */
export class Head {
  readonly identity: HeadIdentity;
  readonly kind: HeadKind;
  readonly geometry: HeadGeometry;
  /** In the order of the counts. */
  readonly channels: readonly Channel[];
  readonly limits: HeadLimits;
  /** Whether answers carry checksums. Without them some damaged readings cannot be told from true ones. */
  readonly checksum: boolean;
  readonly #client: ScpiClient;
  readonly #listeners = new HeadListeners();
  readonly #numbers = new FrameNumbers();
  readonly #heartbeat: Repeating;
  readonly #button: ButtonWatch;
  #settings: HeadSettings;
  #restarts = 0;
  #finished = false;

  constructor({ client, identity, description, settings, checksum, heartbeatMs }: HeadParts) {
    this.identity = identity;
    this.kind = description.kind;
    this.geometry = description.geometry;
    this.channels = description.channels;
    this.limits = description.limits;
    this.checksum = checksum;
    this.#client = client;
    this.#settings = settings;
    const { clock } = client.line;
    this.#heartbeat = new Repeating(clock, heartbeatMs, async () => {
      if (clock.now() - client.lastTraffic >= heartbeatMs) await this.#ask({ send: '*OPC?', read: wantOne });
    });
    this.#button = new ButtonWatch(client, this.#listeners, countsPresses(identity.protocol), (wait) => ({
      send: 'FETC?',
      timeoutMs: frameTimeoutMs(this.#settings, this.channels.length),
      prepare: async () => this.#numbers.follow(wait.frame),
      read: (answer) => this.#take(answer, undefined),
    }));
    client.onDown = (fault) => this.#finish(fault);
    client.recover = () => this.#recover();
    this.#heartbeat.start();
  }

  /** The port, as a person calls it. */
  get portName(): string {
    return this.#client.line.portName;
  }

  get isConnected(): boolean {
    return !this.#finished;
  }

  /** As read back from the head. */
  get settings(): HeadSettings {
    return this.#settings;
  }

  /** Lines nobody asked for, questions asked twice, restarts: the health of the line. */
  get health(): { readonly noiseLines: number; readonly retries: number; readonly restarts: number } {
    return {
      noiseLines: this.#client.line.noiseLines,
      retries: this.#client.retries,
      restarts: this.#restarts,
    };
  }

  /** @returns a function that takes the listener away again */
  on<K extends keyof HeadEvents>(name: K, listener: (event: HeadEvents[K]) => void): () => void {
    return this.#listeners.on(name, listener);
  }

  /**
   * Sets gain (a member of `limits.gains`), aperture (s) and averaging, and resolves with what the head reads back.
   * White and dark belong to one setting: take them anew after this.
   * @throws DeviceFault `out-of-range`, `refused`, `settings`, and those of the line
   */
  async configure(wanted: WantedSettings): Promise<HeadSettings> {
    const settings = await this.#guard(() => applySettings(this.#client, wanted, this.limits));
    this.#settings = settings;
    return settings;
  }

  /** One light frame. @throws DeviceFault `saturated`, `hardware`, and those of the line */
  read(): Promise<HeadReading> {
    return this.#frame('READ?', true);
  }

  /** One frame with the lamp off. */
  readDark(): Promise<HeadReading> {
    return this.#frame('READ:DARK?', false);
  }

  /** K. */
  temperature(): Promise<number> {
    const read = (answer: string): number => {
      const kelvin = parsePlainNumber(answer);
      if (kelvin === undefined) throw new DeviceFault('frame', { asked: 'MEAS:TEMP?', seen: `"${answer}"` });
      return kelvin;
    };
    return this.#ask({ send: 'MEAS:TEMP?', read });
  }

  /** Factory XYZ of a tristimulus head. @throws DeviceFault `unsupported` on other heads */
  async xyz(): Promise<TristimulusReading> {
    if (this.kind !== 'tristimulus') throw new DeviceFault('unsupported', { asked: 'MEAS:XYZ?' });
    return this.#ask({
      send: 'MEAS:XYZ?',
      timeoutMs: frameTimeoutMs(this.#settings, this.channels.length),
      prepare: async () => {
        this.#button.readingEndsWait();
        this.#numbers.doubt();
      },
      read: readTristimulus,
    });
  }

  condition(): Promise<HeadCondition> {
    return this.#guard(() => readCondition(this.#client));
  }

  /** Keeps the lamp on (or off) between readings; a reading sees to its own lamp. */
  setLamp(on: boolean): Promise<void> {
    return this.#guard(() => command(this.#client, `OUTP ${on ? 1 : 0}`));
  }

  /**
   * From now on the head's own button takes readings: listen to `press`. Each press carries what the button was armed
   * for when it was pressed; once this resolves no earlier press can count for `waitedFor`.
   */
  armButton(waitedFor?: unknown): Promise<void> {
    return this.#guard(() => this.#button.arm(waitedFor));
  }

  disarmButton(): Promise<void> {
    return this.#guard(() => this.#button.disarm());
  }

  /** Idempotent. Does not tell `down`. */
  async close(): Promise<void> {
    this.#stop();
    this.#listeners.clear();
    await this.#client.close();
  }

  async #frame(send: string, lamp: boolean): Promise<HeadReading> {
    try {
      return await this.#ask({
        send,
        timeoutMs: frameTimeoutMs(this.#settings, this.channels.length),
        prepare: (line) => this.#expectNext(line),
        read: (answer) => this.#take(answer, lamp),
      });
    } catch (error) {
      throw await this.#explained(error);
    }
  }

  /** Makes sure of the number the next frame will have, and counts on none should it fail to come. */
  async #expectNext(line: QueryLine): Promise<void> {
    const pressedPerhaps = this.#button.readingEndsWait();
    if (pressedPerhaps || !this.#numbers.sure) await this.#numbers.learn(line);
    this.#numbers.doubt();
  }

  #take(answer: string, lamp: boolean | undefined): HeadReading {
    return takeReading(answer, {
      channels: this.channels,
      settings: this.#settings,
      lamp,
      numbers: this.#numbers,
    });
  }

  /** Asks the error queue for the reason of a saturated or failed frame, which also empties it. */
  async #explained(error: unknown): Promise<unknown> {
    if (!isDeviceFault(error) || (error.kind !== 'saturated' && error.kind !== 'hardware')) return error;
    try {
      const entries = await drainErrors(this.#client);
      if (error.kind === 'hardware') {
        const words = entries.map((entry) => `${entry.code}, ${entry.text}`).join('; ');
        return words === '' ? error : new DeviceFault('hardware', { seen: words }, { cause: error });
      }
      const named = entries.filter((entry) => entry.code === 510).flatMap((entry) => entry.detail ?? []);
      const channels = [...new Set([...(error.details.channels ?? []), ...named])];
      return new DeviceFault('saturated', { ...error.details, channels }, { cause: error });
    } catch {
      return error; // the line failed meanwhile: the first fault is the one to show
    }
  }

  #ask<T>(question: Question<T>): Promise<T> {
    return this.#guard(() => this.#client.ask(question));
  }

  /** A line that cannot be brought back into step is closed: only a new connection helps. */
  async #guard<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (isDeviceFault(error) && error.kind === 'out-of-sync') {
        this.#finish(error);
        await this.#client.close();
      }
      throw error;
    }
  }

  /** A head that cannot be set as it was is let go: half recovered, it might answer without checksums. */
  async #recover(): Promise<void> {
    try {
      await this.#setAsItWas();
    } catch (error) {
      const details = { port: this.portName };
      this.#finish(isDeviceFault(error) ? error : new DeviceFault('out-of-sync', details, { cause: error }));
      await this.#client.close();
      throw error;
    }
    this.#numbers.doubt();
    this.#button.restarted();
    this.#restarts++;
    this.#listeners.emit('restarted', { times: this.#restarts });
  }

  /** Talks through `direct`: the question that noticed the restart is still open. */
  async #setAsItWas(): Promise<void> {
    const { direct, line } = this.#client;
    if (this.checksum && !(await startChecksums(direct, line))) throw new DeviceFault('no-crc');
    await checkIdentity(direct, this.identity, this.portName);
    const { gain, apertureS, averages } = this.#settings;
    this.#settings = await applySettings(direct, { gain, apertureS, averages }, this.limits);
  }

  #stop(): void {
    this.#finished = true;
    this.#heartbeat.stop();
    this.#button.stop();
  }

  #finish(fault: DeviceFault): void {
    if (this.#finished) return;
    this.#stop();
    this.#listeners.emit('down', fault);
    this.#listeners.clear();
  }
}
