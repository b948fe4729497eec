import type { Head } from '../../src/device/head/head.ts';
import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { Instrument } from '../api/instrument.ts';
import type { Finding } from '../api/words.ts';
import { formOfHead } from './head-channels.ts';
import type { HeadSession } from './head-session.ts';
import { say } from '../api/sentences/instrument.ts';

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
    todo: say('todo-dark'),
  },
  { step: 'white tile', optional: false, todo: say('todo-white') },
  {
    step: 'black trap',
    optional: true,
    todo: say('todo-trap'),
  },
  {
    step: 'check tile',
    optional: true,
    todo: say('todo-check'),
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
      sentence: say('no-checksum'),
    });
  }
  if (head && scale?.hasWhite && !scale.hasTrap) {
    findings.push({
      level: 'note',
      code: 'no-trap',
      sentence: say('no-trap'),
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
      sentence: warm?.sentence ?? say('none'),
    },
    findings,
    next: nextSentence(facts, steps),
    readyToRead: head !== undefined && scale?.hasWhite === true && facts.state !== 'connecting',
    form: head ? formOfHead(head) : null,
    placedOn: practice ? placedWords(practice) : null,
  };
}

function nextSentence(facts: InstrumentFacts, steps: Instrument['steps']): string {
  if (facts.state === 'connecting') return facts.waiting || say('looking');
  if (facts.state === 'lost') return say('plug-in-again');
  if (!facts.head) return say('connect-one');
  const white = steps.find((s) => s.step === 'white tile')!;
  if (white.state !== 'good') return white.sentence;
  const trap = steps.find((s) => s.step === 'black trap')!;
  if (trap.state !== 'good') return trap.sentence;
  return say('ready');
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
