import { randomBytes } from 'node:crypto';

/** A short random id with a letter for its kind: 12 base-36 digits hold about 62 bits. */
export function newId(kind: string): string {
  const digits = BigInt(`0x${randomBytes(8).toString('hex')}`)
    .toString(36)
    .padStart(13, '0')
    .slice(-12);
  return `${kind}-${digits}`;
}

/** "Deep blue (2nd tube)" to "deep-blue-2nd-tube"; ids of tubes are typed by people. */
export function slug(label: string): string {
  const plain = label
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain.slice(0, 60) || 'tube';
}

/** The wanted id, or the first of wanted-2, wanted-3, ... that is free. */
export function freeId(wanted: string, taken: (id: string) => boolean): string {
  if (!taken(wanted)) return wanted;
  for (let n = 2; ; n += 1) if (!taken(`${wanted}-${n}`)) return `${wanted}-${n}`;
}
