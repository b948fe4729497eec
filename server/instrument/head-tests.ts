/** Tests the head can do by itself, lying on its white tile. */
import { apertureLinearity } from '../../src/calibrate/linearity/aperture.ts';
import { type GainRatio, gainRatio } from '../../src/calibrate/linearity/gain-ratio.ts';
import type { HeadTest } from '../../src/calibrate/linearity/superposition.ts';
import { unusable } from '../problem.ts';
import { meanSignal } from './exposures.ts';
import type { HeadSession } from './head-session.ts';
import { say } from '../api/sentences/instrument.ts';

/** Exposures at the longest aperture; shorter ones take as many more as they are shorter, for the same light in all. */
const EXPOSURES = 4;

/** The head on its white tile at t, t/2, t/4, t/8. @throws DeviceFault, ReadingRefused */
export async function testAperture(session: HeadSession): Promise<HeadTest> {
  const { head, channels } = session;
  session.practice?.place({ kind: 'white-tile' });
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
  return apertureLinearity(readings, session.channelNames);
}

/**
 * The white tile at the gain in use and at the next lower one, which cannot fill the scale.
 * @throws DeviceFault, ReadingRefused; HttpProblem at the lowest gain
 */
export async function testGain(session: HeadSession): Promise<GainRatio> {
  const { head, channels } = session;
  session.practice?.place({ kind: 'white-tile' });
  const { gain, apertureS, averages } = head.settings;
  const lower = head.limits.gains.filter((g) => g < gain).toSorted((a, b) => b - a)[0];
  if (lower === undefined) throw unusable(say('lowest-gain', { gain }), 'gain');
  const from = { gain, signal: await meanSignal(head, channels, EXPOSURES) };
  await head.configure({ gain: lower, apertureS, averages });
  const to = { gain: lower, signal: await meanSignal(head, channels, 2 * EXPOSURES) };
  return gainRatio(from, to, session.channelNames);
}
