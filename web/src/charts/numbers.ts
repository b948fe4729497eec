import { num } from '../text/numbers.ts';

/** Digits enough to tell values apart, never scientific between 0.001 and 100 000. */
export function significant(value: number, digits = 3): string {
  if (value === 0 || !Number.isFinite(value)) return num(value, 0);
  const size = Math.floor(Math.log10(Math.abs(value)));
  return num(value, Math.min(6, Math.max(0, digits - 1 - size)));
}
