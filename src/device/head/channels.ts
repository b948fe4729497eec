import { DeviceFault, isDeviceFault } from '../fault.ts';
import { splitOutsideQuotes, unquote } from '../framing/fields.ts';
import { parseHeadNumber, parseNaturalNumber, parsePlainNumber } from '../framing/number.ts';
import type { Conversation } from '../scpi/ask.ts';
import { drainErrors } from '../scpi/error-queue.ts';
import { say } from '../sentences.ts';

/** Response of one channel to wavelength (filter x lamp x detector), any scale. */
export interface ChannelResponse {
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}

/** One channel, in the order the counts come. */
export interface Channel {
  readonly name: string;
  /** Centre, nm; `undefined` for a channel without one (clear, X, Y, Z). */
  readonly centreNm: number | undefined;
  /** Full width at half maximum, nm. */
  readonly fwhmNm: number | undefined;
  /** As the head reports it, where it knows. */
  readonly response?: ChannelResponse;
}

export const MOST_CHANNELS = 512;
const PAGE = 32;

/** Reads the catalogue of all channels, page by page. @throws DeviceFault `frame` */
export async function readChannels(talk: Conversation): Promise<Channel[]> {
  const total = await talk.ask({ send: 'SENS:CHAN:COUN?', read: readChannelCount });
  const channels: Channel[] = [];
  while (channels.length < total) {
    const count = Math.min(PAGE, total - channels.length);
    const send = total <= PAGE ? 'SENS:CHAN:CAT?' : `SENS:CHAN:CAT? ${channels.length + 1},${count}`;
    channels.push(...(await talk.ask({ send, read: (answer) => readCatalogue(answer, count) })));
  }
  const names = new Set(channels.map((channel) => channel.name));
  if (names.size !== channels.length) throw odd(say('two-of-one-name'));
  return channels;
}

function readChannelCount(answer: string): number {
  const count = parseNaturalNumber(answer);
  if (count === undefined || count < 1 || count > MOST_CHANNELS) {
    throw odd(say('channels-answer', { seen: answer, most: MOST_CHANNELS }));
  }
  return count;
}

/** Parses `"F1",4.15E-7,2.6E-8,...`: name, centre (m), width (m). */
export function readCatalogue(answer: string, count: number): Channel[] {
  const fields = splitOutsideQuotes(answer, ',');
  if (fields?.length !== 3 * count)
    throw odd(say('catalogue-fields', { seen: fields?.length ?? 'broken', wanted: 3 * count }));
  return Array.from({ length: count }, (_, i) => {
    const name = unquote(fields[3 * i] ?? '');
    if (!name) throw odd(say('channel-name', { seen: String(fields[3 * i]) }));
    return {
      name,
      centreNm: nanometres(fields[3 * i + 1], 200, 1200),
      fwhmNm: nanometres(fields[3 * i + 2], 0.1, 1000),
    };
  });
}

function nanometres(field: string | undefined, lowest: number, highest: number): number | undefined {
  const metres = parseHeadNumber(field ?? '');
  if (metres === 'not-a-number') return undefined;
  const nm = typeof metres === 'number' ? Math.round(metres * 1e12) / 1e3 : Number.NaN;
  if (!(nm >= lowest && nm <= highest)) throw odd(say('metres', { seen: String(field) }));
  return nm;
}

/** Adds the response of each channel where the head knows it; heads without the command are left as they are. */
export async function withResponses(talk: Conversation, channels: readonly Channel[]): Promise<Channel[]> {
  const described: Channel[] = [];
  for (const [index, channel] of channels.entries()) {
    try {
      const send = `SENS:CHAN:RESP? ${index + 1};:SYST:ERR:COUN?`;
      const response = await talk.ask({ send, read: readResponse });
      if (response === undefined) {
        await drainErrors(talk);
        return [...channels];
      }
      described.push({ ...channel, response });
    } catch (error) {
      if (isDeviceFault(error) && error.kind === 'frame') return [...channels];
      throw error;
    }
  }
  return described;
}

/** Parses `<start_m>,<step_m>,<n>,<v1>,...;<errors>`; only the error count means the command is unknown. */
function readResponse(answer: string): ChannelResponse | undefined {
  const [table, errors] = answer.split(';');
  if (errors === undefined && parseNaturalNumber(answer)) return undefined;
  const fields = (table ?? '').split(',');
  const numbers = fields.map((field) => parsePlainNumber(field));
  const [start, step, n, ...values] = numbers;
  if (
    start === undefined ||
    !step ||
    step < 0 ||
    n !== values.length ||
    n < 2 ||
    numbers.includes(undefined)
  ) {
    throw odd(say('response-shape'));
  }
  const nm = (metres: number): number => Math.round(metres * 1e12) / 1e3;
  return { startNm: nm(start), stepNm: nm(step), values: values as number[] };
}

function odd(seen: string): DeviceFault {
  return new DeviceFault('frame', { asked: say('channel-catalogue'), seen });
}
