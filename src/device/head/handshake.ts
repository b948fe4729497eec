import { DeviceFault, isDeviceFault } from '../fault.ts';
import { unquote } from '../framing/fields.ts';
import type { Conversation } from '../scpi/ask.ts';
import type { QueryLine } from '../scpi/query-line.ts';
import { readQueueEntry } from '../scpi/error-queue.ts';
import { readChannels, withResponses } from './channels.ts';
import type { Channel } from './channels.ts';
import { PROTOCOL_MAJOR, PROTOCOL_MINOR, parseIdentity, speaksThisProtocol } from './identity.ts';
import type { HeadIdentity } from './identity.ts';
import { readLimits } from './settings.ts';
import type { HeadLimits } from './settings.ts';
import { say } from '../sentences.ts';

/** `spectral` on any grid, a few `bands`, or `tristimulus`: the kinds of a swatch set's instrument. */
export type HeadKind = 'spectral' | 'bands' | 'tristimulus';

/** How it lights and looks. */
export type HeadGeometry = '45/0' | 'd/8 specular included' | 'd/8 specular excluded';

const KINDS: Readonly<Record<string, HeadKind>> = { SPEC: 'spectral', BAND: 'bands', XYZ: 'tristimulus' };
const GEOMETRIES: readonly string[] = ['45/0', 'd/8 specular included', 'd/8 specular excluded'];

/** What a head says about itself. */
export interface HeadDescription {
  readonly kind: HeadKind;
  readonly geometry: HeadGeometry;
  readonly channels: readonly Channel[];
  readonly limits: HeadLimits;
}

/** @throws DeviceFault `protocol` when the head speaks another major version, or none */
export async function readProtocol(talk: Conversation): Promise<string> {
  const allowed = `${PROTOCOL_MAJOR}.${PROTOCOL_MINOR} or a later ${PROTOCOL_MAJOR}.x`;
  let version: string;
  try {
    version = await talk.ask({ send: 'SYST:PROT:VERS?', read: (answer) => answer });
  } catch (error) {
    if (!isDeviceFault(error) || error.kind !== 'timeout') throw error;
    throw new DeviceFault('protocol', { allowed }, { cause: error });
  }
  if (!speaksThisProtocol(version))
    throw new DeviceFault('protocol', { seen: version.slice(0, 20), allowed });
  return version;
}

/**
 * Asks for checksums from now on. The set is sent unchecked; the answer that follows must already carry one.
 * @returns whether the head has them
 */
export async function startChecksums(talk: Conversation, line: QueryLine): Promise<boolean> {
  line.checksum = false;
  const state = await talk.ask({
    send: 'SYST:COMM:CRC 1;:SYST:ERR?;:SYST:COMM:CRC?',
    read: (answer) => {
      if (answer === '0,"No error";1') return true;
      const entry = readQueueEntry(answer.split(';')[0] ?? '');
      if (entry.code === 0) throw new DeviceFault('frame', { seen: say('after-crc', { seen: answer }) });
      return false;
    },
  });
  line.checksum = state;
  // Proof: from here on an answer without a good checksum is refused.
  if (state) await talk.ask({ send: '*OPC?', read: wantOne });
  else await line.send('*CLS');
  return state;
}

/** @throws DeviceFault `other-head` when the serial number is not the wanted one */
export async function checkIdentity(
  talk: Conversation,
  wanted: Omit<HeadIdentity, 'protocol'>,
  port: string,
) {
  const found = await talk.ask({ send: '*IDN?', read: readIdentity });
  if (found.serial !== wanted.serial || found.model !== wanted.model) {
    const seen = `${found.model} ${found.serial}`;
    throw new DeviceFault('other-head', { port, seen, allowed: `${wanted.model} ${wanted.serial}` });
  }
}

function readIdentity(answer: string): Omit<HeadIdentity, 'protocol'> {
  const identity = parseIdentity(answer);
  if (!identity) throw new DeviceFault('frame', { asked: '*IDN?', seen: `"${answer.slice(0, 40)}"` });
  return identity;
}

export function wantOne(answer: string): true {
  if (answer !== '1') throw new DeviceFault('frame', { asked: '*OPC?', seen: `"${answer.slice(0, 40)}"` });
  return true;
}

export async function readDescription(talk: Conversation): Promise<HeadDescription> {
  const kind = await talk.ask({ send: 'SENS:FUNC?', read: (answer) => pick(answer, KINDS) });
  const geometry = await talk.ask({
    send: 'SENS:GEOM?',
    read: (answer) => {
      const text = unquote(answer);
      if (text === undefined || !GEOMETRIES.includes(text)) {
        throw new DeviceFault('frame', {
          asked: say('its-geometry'),
          seen: `${answer}; allowed: ${GEOMETRIES.join(', ')}`,
        });
      }
      return text as HeadGeometry;
    },
  });
  const bare = await readChannels(talk);
  const channels = await withResponses(talk, bare);
  return { kind, geometry, channels, limits: await readLimits(talk) };
}

function pick(answer: string, kinds: Readonly<Record<string, HeadKind>>): HeadKind {
  const kind = kinds[unquote(answer) ?? ''];
  if (!kind) {
    throw new DeviceFault('frame', {
      asked: say('its-kind'),
      seen: `${answer}; allowed: ${Object.keys(kinds).join(', ')}`,
    });
  }
  return kind;
}
