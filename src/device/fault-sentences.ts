import type { FaultDetails, FaultKind } from './fault.ts';
import { say } from './sentences.ts';

type Sentence = (d: FaultDetails) => string;

const port = (d: FaultDetails): string => d.port ?? say('the-port');
/** At the beginning of a sentence. */
const portFirst = (d: FaultDetails): string => (d.port ? capital(d.port) : say('the-port-first'));
const seen = (d: FaultDetails, otherwise: string): string => d.seen ?? otherwise;
const list = (names: readonly string[] | undefined): string =>
  names?.length ? names.join(', ') : say('a-channel');
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Every fault's sentence: what was seen, what is allowed, what to do next. */
export const FAULT_SENTENCES: Readonly<Record<FaultKind, Sentence>> = {
  'no-serial-support': (d) => say('no-serial-support', { cause: seen(d, say('no-library')) }),
  permission: (d) => say('permission', { port: portFirst(d) }),
  busy: (d) => say('busy', { port: portFirst(d) }),
  waiting: (d) => say('waiting', { port: portFirst(d), limit: d.allowed ?? '30 s' }),
  'busy-or-denied': (d) => say('busy-or-denied', { port: portFirst(d) }),
  missing: (d) => say('missing', { port: port(d) }),
  'not-a-serial-port': (d) => say('not-a-serial-port', { port: portFirst(d) }),
  'open-timeout': (d) => say('open-timeout', { port: portFirst(d), limit: d.allowed ?? '3 s' }),
  'open-failed': (d) => say('open-failed', { port: portFirst(d), cause: seen(d, say('no-reason')) }),
  disconnected: (d) =>
    say('disconnected', { port: port(d), asked: d.asked ? say('while-waiting', { what: d.asked }) : '' }),
  timeout: (d) => say('timeout', { what: d.asked ?? say('a-question'), limit: d.allowed ?? say('its-time') }),
  overlong: (d) => say('overlong', { limit: d.allowed ?? '4096' }),
  crc: () => say('crc'),
  'no-crc': () => say('no-crc'),
  frame: (d) => say('frame', { seen: seen(d, say('wrong-shape')) }),
  stale: () => say('stale'),
  sequence: (d) => say('sequence', { seen: seen(d, say('number-missing')) }),
  'out-of-sync': (d) => say('out-of-sync', { port: port(d) }),
  'no-answer': (d) =>
    say('no-answer', {
      port: port(d),
      limit: d.allowed ?? '3 s',
      heard: d.seen ? say('heard', { what: d.seen }) : '',
    }),
  protocol: (d) => say('protocol', { version: seen(d, 'unknown'), allowed: d.allowed ?? '1.0' }),
  'other-head': (d) =>
    say('other-head', {
      port: port(d),
      seen: seen(d, say('unknown-serial')),
      wanted: d.allowed ?? say('one-before'),
    }),
  settings: (d) =>
    say('settings', { seen: seen(d, say('they-differ')), wanted: d.allowed ?? say('those-of-white') }),
  saturated: (d) =>
    d.seen
      ? say('saturated-seen', { channels: list(d.channels), seen: d.seen })
      : say('saturated', { channels: list(d.channels) }),
  hardware: (d) => say('hardware', { seen: seen(d, say('hardware-error')) }),
  refused: (d) =>
    say('refused', {
      what: d.asked ?? say('a-command'),
      cause: seen(d, say('no-reason')),
      allowed: d.allowed ? say('allowed', { values: d.allowed }) : say('own-documents'),
    }),
  unsupported: (d) => say('unsupported', { what: d.asked ?? say('that-command') }),
  'out-of-range': (d) =>
    say('out-of-range', {
      value: capital(seen(d, say('the-value'))),
      allowed: d.allowed ?? say('see-the-head'),
    }),
};
