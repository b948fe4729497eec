import type { Head } from '../../src/device/head/head.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { Finding } from '../api/words.ts';
import { BenchScale } from './bench-scale.ts';
import type { Placings } from './guided-tests.ts';
import { colourChannels } from './head-channels.ts';
import type { StepMemory } from './instrument-view.ts';
import type { TileValues } from './tile-reference.ts';

/** One head from connecting to letting go: what it is set on, and what was found on the way. */
export class HeadSession {
  /** A new object each time its cable was out. */
  head: Head;
  readonly practice: PracticeInstrument | undefined;
  /** Indices of the channels that carry colour. */
  readonly channels: readonly number[];
  scale: BenchScale;
  steps: StepMemory = {};
  note: Finding | undefined;
  kelvin: number | undefined;
  /** What the tile under the last white reads, and whether that is known rather than taken as 1. */
  tile: TileValues = { reflectance: [] };
  tileKnown = false;
  /** The white whose block readings belong to now. */
  block: number | undefined;
  /** What tests in several steps have so far. */
  placings: Placings = {};

  constructor(head: Head, practice: PracticeInstrument | undefined) {
    this.head = head;
    this.practice = practice;
    this.channels = colourChannels(head);
    this.scale = this.#newScale();
  }

  /** Its identity: what is kept of it is kept under this name. */
  get name(): string {
    return `${this.head.identity.model} ${this.head.identity.serial}`;
  }

  get channelNames(): readonly string[] {
    return this.scale.head.channels;
  }

  /** White, trap and dark must be read again. */
  beginScale(): void {
    this.scale = this.#newScale();
    this.steps = {};
    this.note = undefined;
    this.placings = {};
  }

  setStep(step: keyof StepMemory, state: 'good' | 'refused', sentence: string, at: string): void {
    this.steps = { ...this.steps, [step]: { state, sentence, at } };
  }

  #newScale(): BenchScale {
    const { head } = this;
    const channels = this.channels.map((i) => head.channels[i]!.name);
    return new BenchScale({ channels, fullScale: head.settings.fullScale }, head.settings.gain);
  }
}
