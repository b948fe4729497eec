import type { DeviceFault } from '../../src/device/fault.ts';
import type { Clock } from '../../src/device/clock.ts';
import { PracticeLink } from '../../src/device/practice/practice-head.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import type { ByteLink } from '../../src/device/transport.ts';

/** What can happen to one answer, or to one message, on its way. */
export const DAMAGES = [
  'bits flipped',
  'bytes lost',
  'bytes added',
  'noise burst',
  'digit changed',
  'digits swapped',
  'several digits changed',
  'cut, with its line end',
  'cut, glued to what follows',
  'sent twice',
  'an older frame in its place',
  'late',
  'lost',
  'question damaged',
  'head restarted',
] as const;
export type Damage = (typeof DAMAGES)[number];

const LF = 10;
const isDigit = (byte: number): boolean => byte >= 0x30 && byte <= 0x39;

/**
 * A cable that damages exactly one answer (or question) each time it is told to. Like any wire it keeps the order: what
 * comes after a late answer is later still, and what was on it before the head lost its power is not kept.
 */
export class FaultyWire implements ByteLink {
  readonly name = 'faulty wire';
  onBytes: ((bytes: Uint8Array) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  readonly #link: PracticeLink;
  readonly #clock: Clock;
  readonly #dice: SeededNoise;
  #next: Damage | undefined;
  #older: Uint8Array | undefined;
  /** Answers held up behind a late one. */
  #held: Uint8Array[] | undefined;

  constructor(instrument: PracticeInstrument, clock: Clock, dice: SeededNoise) {
    this.#link = new PracticeLink(instrument);
    this.#clock = clock;
    this.#dice = dice;
    this.#link.onBytes = (bytes) => this.#answer(bytes);
    this.#link.onDown = (fault) => this.onDown?.(fault);
  }

  get isOpen(): boolean {
    return this.#link.isOpen;
  }

  damageNext(damage: Damage): void {
    this.#next = damage;
  }

  open(): Promise<void> {
    return this.#link.open();
  }

  write(bytes: Uint8Array): Promise<void> {
    if (this.#next === 'question damaged') {
      this.#next = undefined;
      return this.#link.write(this.#flip(bytes, 1 + this.#dice.below(3)));
    }
    if (this.#next === 'head restarted') {
      this.#next = undefined;
      this.#link.instrument.powerOn();
      this.#older = undefined;
    }
    return this.#link.write(bytes);
  }

  close(): Promise<void> {
    return this.#link.close();
  }

  unplug(): void {
    this.#link.unplug();
  }

  #answer(bytes: Uint8Array): void {
    const damage = this.#next;
    this.#next = undefined;
    if (this.#held) {
      this.#held.push(bytes);
    } else if (damage === 'late') {
      this.#held = [bytes];
      this.#clock.after(300 + this.#dice.below(3000), () => this.#release());
    } else if (damage !== 'lost') {
      this.onBytes?.(damage === undefined ? bytes : this.#damaged(bytes, damage));
    }
    if (bytes.length > 60) this.#older = bytes;
  }

  #release(): void {
    const held = this.#held ?? [];
    this.#held = undefined;
    for (const bytes of held) this.onBytes?.(bytes);
  }

  #damaged(bytes: Uint8Array, damage: Damage): Uint8Array {
    const dice = this.#dice;
    const at = dice.below(bytes.length);
    const random = (n: number): number[] => Array.from({ length: n }, () => dice.below(256));
    switch (damage) {
      case 'bits flipped':
        return this.#flip(bytes, 1 + dice.below(4));
      case 'bytes lost':
        return Uint8Array.from([...bytes.slice(0, at), ...bytes.slice(at + 1 + dice.below(6))]);
      case 'bytes added':
        return Uint8Array.from([...bytes.slice(0, at), ...random(1 + dice.below(6)), ...bytes.slice(at)]);
      case 'noise burst': {
        const noise = random(2 + dice.below(20));
        return Uint8Array.from([...bytes.slice(0, at), ...noise, ...bytes.slice(at + noise.length)]);
      }
      case 'digit changed':
        return this.#digits(bytes, 1);
      case 'several digits changed':
        return this.#digits(bytes, 2 + dice.below(8));
      case 'digits swapped':
        return this.#swapped(bytes);
      case 'cut, with its line end':
        return Uint8Array.from([...bytes.slice(0, at), LF]);
      case 'cut, glued to what follows':
        return bytes.slice(0, at);
      case 'sent twice':
        return Uint8Array.from([...bytes, ...bytes]);
      case 'an older frame in its place':
        return this.#older ?? bytes;
      default:
        return bytes;
    }
  }

  #flip(bytes: Uint8Array, bits: number): Uint8Array {
    const flipped = bytes.slice();
    for (let i = 0; i < bits; i++) flipped[this.#dice.below(bytes.length)]! ^= 1 << this.#dice.below(8);
    return flipped;
  }

  /** Digits for digits, anywhere but in the checksum: what no rule of grammar can see. */
  #digits(bytes: Uint8Array, count: number): Uint8Array {
    const changed = bytes.slice();
    const places = [...bytes.keys()].filter((i) => isDigit(bytes[i]!));
    for (let i = 0; i < count && places.length > 0; i++) {
      const place = places[this.#dice.below(places.length)]!;
      changed[place] = 0x30 + ((changed[place]! - 0x30 + 1 + this.#dice.below(9)) % 10);
    }
    return changed;
  }

  #swapped(bytes: Uint8Array): Uint8Array {
    const swapped = bytes.slice();
    const places = [...bytes.keys()].filter((i) => isDigit(bytes[i]!) && isDigit(bytes[i + 1] ?? 0));
    const place = places[this.#dice.below(places.length)];
    if (place !== undefined) [swapped[place], swapped[place + 1]] = [bytes[place + 1]!, bytes[place]!];
    return swapped;
  }
}
