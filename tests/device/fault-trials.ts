import { isDeviceFault } from '../../src/device/fault.ts';
import { LineLink } from '../../src/device/framing/line-link.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import { DAMAGES, FaultyWire } from './faulty-wire.ts';
import type { Damage } from './faulty-wire.ts';
import { SimulatedClock } from './simulated-clock.ts';

export interface TrialCount {
  trials: number;
  /** Readings accepted that the head never took as they stand, or took before they were asked for. */
  wrong: number;
  wrongBy: Partial<Record<Damage, number>>;
  rightAtOnce: number;
  rightAfterRepeat: number;
  faults: Record<string, number>;
  reconnects: number;
}

/** An instrument that keeps every frame it has taken since a moment, as sent. */
class WitnessedInstrument extends PracticeInstrument {
  frames: string[] = [];

  override async takeFrame(lamp: boolean): Promise<string> {
    const frame = await super.takeFrame(lamp);
    this.frames.push(frame);
    return frame;
  }
}

/**
 * Reads `trials` times through a wire that damages one answer or question each time, and compares every accepted
 * reading with the frames the instrument took during that call. The same seed gives the same trials.
 */
export async function faultTrials(trials: number, checksum: boolean, seed: number): Promise<TrialCount> {
  const clock = new SimulatedClock();
  const dice = new SeededNoise(seed);
  const instrument = new WitnessedInstrument(clock, { seed, checksums: checksum });
  const count: TrialCount = {
    trials,
    wrong: 0,
    wrongBy: {},
    rightAtOnce: 0,
    rightAfterRepeat: 0,
    faults: {},
    reconnects: 0,
  };
  let wire: FaultyWire;
  const connect = (): Promise<Head> => {
    wire = new FaultyWire(instrument, clock, dice);
    return clock.run(connectHead(new LineLink(wire), clock, { settings: { gain: 32, apertureS: 0.05 } }));
  };
  let head = await connect();
  for (let trial = 0; trial < trials; trial++) {
    if (!head.isConnected) {
      count.reconnects++;
      head = await connect();
    }
    const damage = DAMAGES[dice.below(DAMAGES.length)]!;
    const dark = dice.below(4) === 0;
    const { retries } = head.health;
    instrument.frames = [];
    wire!.damageNext(damage);
    try {
      const reading = await clock.run(dark ? head.readDark() : head.read());
      if (!isTrue(reading, instrument.frames, !dark)) {
        count.wrong++;
        count.wrongBy[damage] = (count.wrongBy[damage] ?? 0) + 1;
      } else if (head.health.retries === retries) count.rightAtOnce++;
      else count.rightAfterRepeat++;
    } catch (error) {
      if (!isDeviceFault(error)) throw error;
      count.faults[error.kind] = (count.faults[error.kind] ?? 0) + 1;
    }
    // Late answers come between readings as well as into them.
    if (dice.below(2) === 0) await clock.pass(dice.below(4000));
  }
  await head.close();
  return count;
}

function isTrue(reading: HeadReading, taken: readonly string[], lamp: boolean): boolean {
  const { frame, flags, gain, apertureS, kelvin, counts } = reading;
  return (
    reading.lamp === lamp &&
    gain === 32 &&
    taken.some((line) => {
      const fields = line.split(',').map(Number);
      const wanted = [frame, flags, gain, apertureS, lamp ? 1 : 0, kelvin, counts.length, ...counts];
      return fields.length === wanted.length && fields.every((field, i) => field === wanted[i]);
    })
  );
}
