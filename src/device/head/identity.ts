/** Who answered: the four fields of `*IDN?` and the protocol's version. */
export interface HeadIdentity {
  readonly model: string;
  /** `0` when the head has none. */
  readonly serial: string;
  readonly firmware: string;
  /** Version of the line protocol, as sent: `1.0`. */
  readonly protocol: string;
}

/** The protocol this program speaks: the same major, at least this minor. */
export const PROTOCOL_MAJOR = 1;
export const PROTOCOL_MINOR = 0;

const MAKER = 'TINTLADDER';

/** The answer to `*IDN?` without its checksum, or `undefined` when the line is anything else. */
export function parseIdentity(line: string): Omit<HeadIdentity, 'protocol'> | undefined {
  const fields = line.split(',');
  const [maker, model, serial, firmware] = fields;
  if (fields.length !== 4 || maker !== MAKER || !model || !serial || firmware === undefined) return undefined;
  return /^[\x20-\x7e]{1,72}$/.test(line) ? { model, serial, firmware } : undefined;
}

/** Protocol 1.1 and later: the head counts the presses of its button. */
export function countsPresses(version: string): boolean {
  return speaksThisProtocol(version) && Number(version.split('.')[1]) >= 1;
}

export function speaksThisProtocol(version: string): boolean {
  const found = /^(\d{1,3})\.(\d{1,3})$/.exec(version);
  return found !== null && Number(found[1]) === PROTOCOL_MAJOR && Number(found[2]) >= PROTOCOL_MINOR;
}
