import type { Head } from '../../src/device/head/head.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { Instrument } from '../api/instrument.ts';
import type { Finding } from '../api/words.ts';
import { formOfHead } from './head-channels.ts';
import type { HeadSession } from './head-session.ts';

type StepName = Instrument['steps'][number]['step'];
export type StepMemory = Partial<
  Record<StepName, { readonly state: 'good' | 'refused'; readonly sentence: string; readonly at: string }>
>;

export interface InstrumentFacts {
  readonly state: Instrument['state'];
  readonly head: Head | undefined;
  readonly practice: PracticeInstrument | undefined;
  readonly transport: Instrument['transport'];
  readonly session: HeadSession | undefined;
  readonly fault: string;
  /** Why it is still being connected, where something is waited for. */
  readonly waiting: string;
  readonly nowMs: number;
}

const STEPS: readonly { step: StepName; optional: boolean; todo: string }[] = [
  {
    step: 'dark',
    optional: true,
    todo: 'Cover the port and read the dark once, to see that no light gets in.',
  },
  { step: 'white tile', optional: false, todo: 'Lay the head on the white tile and read it.' },
  {
    step: 'black trap',
    optional: true,
    todo: 'Lay the head on the black trap and read it: it takes the head’s own flare out.',
  },
  {
    step: 'check tile',
    optional: true,
    todo: 'Read the check tile: it tells when something has changed since last time.',
  },
];

/** The instrument as the pages see it. */
export function instrumentView(facts: InstrumentFacts): Instrument {
  const { head, session, practice } = facts;
  const { scale, kelvin, note } = session ?? {};
  const due = scale?.whiteDue(facts.nowMs, kelvin);
  const steps = STEPS.map(({ step, optional, todo }) => {
    const done = session?.steps[step];
    const stale = step === 'white tile' && done?.state === 'good' && due !== undefined;
    return {
      step,
      optional,
      state: done ? (stale ? ('stale' as const) : done.state) : ('not done' as const),
      at: done?.at ?? null,
      sentence: stale ? due : (done?.sentence ?? todo),
    };
  });
  const findings: Finding[] = [];
  if (facts.fault) findings.push({ level: 'refused', code: facts.state, sentence: facts.fault });
  if (facts.waiting) findings.push({ level: 'warning', code: 'busy', sentence: facts.waiting });
  if (note) findings.push(note);
  if (head && !head.checksum) {
    findings.push({
      level: 'warning',
      code: 'no-checksum',
      sentence:
        'This head sends no checksums, so a digit damaged on the cable can pass unseen; keep the cable short and read three times.',
    });
  }
  if (head && scale?.hasWhite && !scale.hasTrap) {
    findings.push({
      level: 'note',
      code: 'no-trap',
      sentence: 'The black trap is not read, so dark colours read a little too light; read it when you can.',
    });
  }
  const warm = scale?.warmUp;
  return {
    state: facts.state,
    transport: head ? facts.transport : null,
    port: head?.portName ?? null,
    identity: head
      ? {
          maker: practice ? 'invented' : 'self-built',
          model: head.identity.model,
          serial: head.identity.serial,
          firmware: head.identity.firmware,
        }
      : null,
    geometry: head?.geometry ?? null,
    kind: head?.kind ?? null,
    channels: (head ? session!.channels : []).map((i) => {
      const c = head?.channels[i];
      return { name: c?.name ?? '', centre: c?.centreNm ?? null, fwhm: c?.fwhmNm ?? null };
    }),
    settings: head ? { gain: head.settings.gain, apertureMs: head.settings.apertureS * 1000 } : null,
    allowed: head
      ? {
          gains: [...head.limits.gains],
          apertureMs: { min: head.limits.apertureMinS * 1000, max: head.limits.apertureMaxS * 1000 },
        }
      : null,
    checksum: head?.checksum ?? false,
    temperature: kelvin === undefined ? null : kelvin,
    steps,
    warmUp: {
      state: warm?.state ?? 'unknown',
      driftPercent: warm?.drift === undefined ? null : 100 * warm.drift,
      sentence: warm?.sentence ?? 'No instrument is connected.',
    },
    findings,
    next: nextSentence(facts, steps),
    readyToRead: head !== undefined && scale?.hasWhite === true && facts.state !== 'connecting',
    form: head ? formOfHead(head) : null,
    placedOn: practice ? placedWords(practice) : null,
  };
}

function nextSentence(facts: InstrumentFacts, steps: Instrument['steps']): string {
  if (facts.state === 'connecting') return facts.waiting || 'Looking for the head.';
  if (facts.state === 'lost')
    return 'Plug the head in again: it is found by itself, and nothing read so far is lost.';
  if (!facts.head) return 'Connect a head, use the practice instrument, or type readings in by hand.';
  const white = steps.find((s) => s.step === 'white tile')!;
  if (white.state !== 'good') return white.sentence;
  const trap = steps.find((s) => s.step === 'black trap')!;
  if (trap.state !== 'good') return trap.sentence;
  return 'Ready: lay the head on a swatch and read.';
}

function placedWords(practice: PracticeInstrument): string {
  const words = {
    'white-tile': 'white tile',
    'black-trap': 'black trap',
    'check-tile': 'check tile',
    swatch: 'swatch',
  };
  return words[practice.surface.kind];
}
