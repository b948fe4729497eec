/** A number as a head sends it (NR1, NR2, NR3), with SCPI-1999's three special values named. */
export type HeadNumber = number | 'over-range' | 'under-range' | 'not-a-number';

const NR = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:E[+-]?\d+)?$/i;

/** `undefined` when the field is not a number at all. */
export function parseHeadNumber(field: string): HeadNumber | undefined {
  if (!NR.test(field)) return undefined;
  const value = Number(field);
  if (value === 9.9e37) return 'over-range';
  if (value === -9.9e37) return 'under-range';
  if (value === 9.91e37) return 'not-a-number';
  return Number.isFinite(value) ? value : undefined;
}

/** A plain number, or `undefined` for anything else, special values included. */
export function parsePlainNumber(field: string): number | undefined {
  const value = parseHeadNumber(field);
  return typeof value === 'number' ? value : undefined;
}

/** An integer of digits only, or `undefined`. */
export function parseNaturalNumber(field: string): number | undefined {
  return /^\d{1,9}$/.test(field) ? Number(field) : undefined;
}
