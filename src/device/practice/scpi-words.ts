/** An error the head queues (protocol section 7). */
export class QueuedError extends Error {
  readonly code: number;

  constructor(code: number, text: string) {
    super(text);
    this.code = code;
  }
}

const TEXTS: Readonly<Record<number, string>> = {
  [-102]: 'Syntax error',
  [-104]: 'Data type error',
  [-108]: 'Parameter not allowed',
  [-109]: 'Missing parameter',
  [-113]: 'Undefined header',
  [-213]: 'Init ignored',
  [-222]: 'Data out of range',
  [-224]: 'Illegal parameter value',
  [-230]: 'Data corrupt or stale',
  [-240]: 'Hardware error',
  [-350]: 'Queue overflow',
  [-363]: 'Input buffer overrun',
  510: 'Channel saturated',
};

export function queuedError(code: number, detail?: string): QueuedError {
  const text = TEXTS[code] ?? 'Device-specific error';
  return new QueuedError(code, detail === undefined ? text : `${text};${detail}`);
}

/** `SYSTem:ERRor[:NEXT]?` as a pattern for both the short and the long form of each node, nothing between. */
export function headerPattern(words: string): RegExp {
  const source = words
    .replace(/[*?]/g, (mark) => `\\${mark}`)
    .replace(/\[/g, '(?:')
    .replace(/\]/g, ')?')
    .replace(/([A-Z]+)([a-z]+)/g, (_, short: string, rest: string) => `${short}(?:${rest})?`);
  return new RegExp(`^:?${source}$`, 'i');
}

const UNITS: Readonly<Record<string, number>> = {
  S: 1,
  MS: 1e-3,
  US: 1e-6,
  M: 1,
  NM: 1e-9,
  UM: 1e-6,
  A: 1,
  MA: 1e-3,
};

export interface NumberRange {
  readonly min: number;
  readonly max: number;
  readonly default: number;
}

/** NRf with an optional unit, or MIN, MAX, DEF. @throws QueuedError -104, -109, -222 */
export function numberParameter(text: string | undefined, range: NumberRange): number {
  if (text === undefined || text === '') throw queuedError(-109);
  const word = text.toUpperCase();
  if (word === 'MIN') return range.min;
  if (word === 'MAX') return range.max;
  if (word === 'DEF') return range.default;
  const found = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:E[+-]?\d+)?)\s*(S|MS|US|M|NM|UM|A|MA)?$/.exec(word);
  if (!found) throw queuedError(-104);
  const value = Number(found[1]) * (UNITS[found[2] ?? ''] ?? 1);
  if (!(value >= range.min && value <= range.max)) throw queuedError(-222);
  return value;
}

export function booleanParameter(text: string | undefined): boolean {
  if (text === undefined || text === '') throw queuedError(-109);
  if (/^(1|ON)$/i.test(text)) return true;
  if (/^(0|OFF)$/i.test(text)) return false;
  throw queuedError(-104);
}

/** NR3 with five significant digits, as the protocol asks. */
export function nr3(value: number): string {
  return value.toExponential(4).toUpperCase().replace('E+', 'E');
}
