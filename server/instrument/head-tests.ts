import { apertureLinearity } from '../../src/calibrate/linearity/aperture.ts';
import { gainRatio } from '../../src/calibrate/linearity/gain-ratio.ts';
import type { HeadTest } from '../../src/calibrate/linearity/superposition.ts';
import { signalOf } from '../../src/calibrate/reading/counts.ts';
import type { Head } from '../../src/device/head/head.ts';
import { unusable } from '../problem.ts';
import { expose } from './exposures.ts';
import type { LiveInstrument } from './live-instrument.ts';

/** Exposures at the longest aperture; shorter ones take as many more as they are shorter, for the same light in all. */
const EXPOSURES = 4;

/** The head on its white tile at t, t/2, t/4, t/8. @throws DeviceFault, ReadingRefused, HttpProblem */
export function testAperture(instrument: LiveInstrument): Promise<HeadTest> {
  instrument.practice?.place({ kind: 'white-tile' });
  return instrument.trial(async (head, channels) => {
    const { gain, apertureS, averages } = head.settings;
    const readings = [];
    for (const shorter of [1, 2, 4, 8]) {
      if (apertureS / shorter < head.limits.apertureMinS) break;
      const set = await head.configure({ gain, apertureS: apertureS / shorter, averages });
      readings.push({
        apertureS: set.apertureS,
        signal: await meanSignal(head, channels, EXPOSURES * shorter),
      });
    }
    return apertureLinearity(readings, namesOf(head, channels));
  });
}

/** The white tile at the gain in use and at the next lower one, which cannot fill the scale. */
export function testGain(instrument: LiveInstrument): Promise<HeadTest> {
  instrument.practice?.place({ kind: 'white-tile' });
  return instrument.trial(async (head, channels) => {
    const { gain, apertureS, averages } = head.settings;
    const lower = head.limits.gains.filter((g) => g < gain).toSorted((a, b) => b - a)[0];
    if (lower === undefined)
      throw unusable(`Gain ${gain} is the lowest there is; set a higher one and test again.`, 'gain');
    const from = { gain, signal: await meanSignal(head, channels, EXPOSURES) };
    await head.configure({ gain: lower, apertureS, averages });
    const to = { gain: lower, signal: await meanSignal(head, channels, 2 * EXPOSURES) };
    return gainRatio(from, to, namesOf(head, channels));
  });
}

function namesOf(head: Head, channels: readonly number[]): string[] {
  return channels.map((i) => head.channels[i]!.name);
}

async function meanSignal(head: Head, channels: readonly number[], times: number): Promise<Float64Array> {
  const sum = new Float64Array(channels.length);
  const counting = { channels: namesOf(head, channels), fullScale: head.settings.fullScale };
  for (let n = 0; n < times; n += 1) {
    const { exposure } = await expose(head, channels);
    signalOf(exposure, counting).forEach((s, c) => (sum[c]! += s / times));
  }
  return sum;
}
