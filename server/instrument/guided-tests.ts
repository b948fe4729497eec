/**
 * Tests of the head that need a hand between their readings: a second light switched on, a shim put under. What was
 * read so far stands in the session and is forgotten with its settings.
 */
import { type LiftReading, liftTest } from '../../src/calibrate/linearity/lift.ts';
import { type HeadTest, superposition } from '../../src/calibrate/linearity/superposition.ts';
import { lightLeakTest } from '../../src/calibrate/reading/light-leak.ts';
import { basicCounts } from '../../src/calibrate/reading/counts.ts';
import type { GuidedTest } from '../api/head-record.ts';
import { conflict } from '../problem.ts';
import { expose, frameOf, meanSignal } from './exposures.ts';
import type { HeadSession } from './head-session.ts';
import { say } from '../api/sentences/instrument.ts';

export interface Placings {
  /** The head's lamp alone, and the dark beside it: basic counts. */
  readonly alone?: { readonly light: Float64Array; readonly dark: Float64Array };
  readonly lift?: readonly LiftReading[];
  /** Reflectance of the painter's own tile, one a placing. */
  readonly ownTile?: readonly Float64Array[];
}

const EXPOSURES = 6;
/** A second light weaker than this against the head's own shows nothing. Common practice, no source. */
const LEAST_SECOND = 0.1;
/** Light that the practice head's second lamp sends under it, as a share of a perfect white. */
const PRACTICE_SECOND_LIGHT = 0.15;

type Outcome = Omit<GuidedTest, 'verdict'> & { readonly verdict: HeadTest | null };

/**
 * Lamps A (the head's own) and B (any steady light that gets under the head): with B off, then with B on.
 * @throws DeviceFault, ReadingRefused, HttpProblem
 */
export async function testSuperposition(session: HeadSession, secondLight: 'off' | 'on'): Promise<Outcome> {
  const { practice, placings } = session;
  const alone = secondLight === 'on' ? placings.alone : undefined;
  if (secondLight === 'on' && !alone) {
    throw conflict(say('own-lamp-first'));
  }
  if (!alone) practice?.place({ kind: 'white-tile' });
  practice?.setTraits({ ambientLeak: alone ? PRACTICE_SECOND_LIGHT : 0 });
  try {
    const seen = await meanFrames(session);
    if (!alone) {
      session.placings = { ...placings, alone: seen };
      return {
        verdict: null,
        next: say('second-light-in'),
      };
    }
    const less = (v: Float64Array): Float64Array => v.map((x, i) => x - alone.dark[i]!);
    const [A, B, both] = [less(alone.light), less(seen.dark), less(seen.light)];
    const share = sum(B) / sum(A);
    if (!(share >= LEAST_SECOND)) {
      throw conflict(say('second-light-weak', { percent: (100 * Math.max(0, share)).toFixed(1) }));
    }
    const verdict = superposition(A, B, both, session.channelNames);
    const { alone: _, ...others } = placings;
    session.placings = others;
    return { verdict, next: say('second-light-away') };
  } finally {
    practice?.setTraits({ ambientLeak: 0 });
  }
}

/** The white tile on shims. @throws DeviceFault, ReadingRefused, HttpProblem */
export async function testLift(session: HeadSession, shimMm: number): Promise<Outcome> {
  const before = shimMm === 0 ? [] : (session.placings.lift ?? []);
  if (shimMm > 0 && before.length === 0) throw conflict(say('lift-begins'));
  const { practice } = session;
  practice?.setTraits({ liftMm: shimMm });
  practice?.place({ kind: 'white-tile' });
  try {
    const signal = await meanSignal(session.head, session.channels, EXPOSURES);
    const lift = [...before.filter((r) => r.shimMm !== shimMm), { shimMm, signal }];
    session.placings = { ...session.placings, lift };
    if (lift.length < 2) return { verdict: null, next: say('shim-one') };
    const verdict = liftTest(lift, session.channelNames);
    const next = lift.length < 3 ? say('shim-two') : say('shims-away');
    return { verdict, next };
  } finally {
    practice?.setTraits({ liftMm: 0 });
  }
}

/** Lamp off, on what lies under the head now. @throws DeviceFault, HttpProblem before white and trap are read */
export async function testLightLeak(session: HeadSession): Promise<HeadTest> {
  const { head, channels, scale, practice } = session;
  practice?.place({ kind: 'check-tile' });
  const leak = scale.leak(frameOf(await head.readDark(), channels));
  if (!leak) throw conflict(say('trap-first'));
  return lightLeakTest(leak, session.channelNames);
}

async function meanFrames({ head, channels, scale }: HeadSession) {
  const light = new Float64Array(channels.length);
  const dark = new Float64Array(channels.length);
  for (let n = 0; n < EXPOSURES; n += 1) {
    const { exposure } = await expose(head, channels);
    scale.signal(exposure); // refuses what is no reading
    basicCounts(exposure.light).forEach((v, i) => (light[i]! += v / EXPOSURES));
    basicCounts(exposure.dark).forEach((v, i) => (dark[i]! += v / EXPOSURES));
  }
  return { light, dark };
}

const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0);
