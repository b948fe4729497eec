import { crc16 } from './crc16.ts';

export type CheckedLine =
  | { readonly state: 'good'; readonly text: string }
  | { readonly state: 'damaged' }
  | { readonly state: 'unchecked'; readonly text: string };

const CHECK_FIELD = /,#H([0-9A-F]{4})$/;

/** The checksum field of a response: a comma, `#H` and four hexadecimal digits over all before that comma. */
export function withChecksum(text: string): string {
  return `${text},#H${crc16(text).toString(16).toUpperCase().padStart(4, '0')}`;
}

/** Takes the checksum field off and says whether it fits; `unchecked` when there is none. */
export function readChecked(line: string): CheckedLine {
  const found = CHECK_FIELD.exec(line);
  if (!found) return { state: 'unchecked', text: line };
  const text = line.slice(0, found.index);
  return crc16(text) === Number.parseInt(found[1] ?? '', 16) ? { state: 'good', text } : { state: 'damaged' };
}
