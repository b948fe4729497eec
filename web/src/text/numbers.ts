/** Numbers as people write and read them: a decimal comma is taken everywhere, and shown where the language has one. */
import { settings } from '../state/settings.ts';

/** British order of day and month; numbers are the same in both. */
const LOCALES = { en: 'en-GB', de: 'de-DE' } as const;
const formats = new Map<string, Intl.NumberFormat>();

/** A number with a fixed count of decimals, in the language in use. A minus is a real minus. */
export function num(value: number, decimals = 1): string {
  if (!Number.isFinite(value)) return '–';
  const language = settings().language;
  const key = `${language}${decimals}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(LOCALES[language], {
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
      // A thousands mark would be read back as a decimal one.
      useGrouping: false,
    });
    formats.set(key, format);
  }
  // Rounding can leave "-0.0", which says nothing.
  const rounded = Number(value.toFixed(decimals));
  return format.format(Object.is(rounded, -0) ? 0 : rounded).replace('-', '−');
}

/** A number with a sign, for differences. */
export function signed(value: number, decimals = 1): string {
  const text = num(Math.abs(value), decimals);
  return Number(value.toFixed(decimals)) === 0 ? text : `${value > 0 ? '+' : '−'}${text}`;
}

/** Grams for a scale of the given resolution: 0.01 g gives two decimals. */
export function grams(value: number, resolution = 0.01): string {
  return `${num(value, Math.max(0, Math.min(4, Math.round(-Math.log10(resolution)))))} g`;
}

/**
 * Reads "3.2", "3,2", "1 200,5", "−0.4", "12 %". One separator only: "1,200.5" and "1.200,5" are refused, since what
 * was meant cannot be known.
 * @returns the number, or undefined where the text is not one.
 */
export function parseNumber(text: string): number | undefined {
  const clean = text
    .trim()
    .replaceAll(/[\s\u00a0\u202f]/g, '')
    .replace('−', '-')
    .replace(/%$/, '');
  if (!/^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(clean)) return undefined;
  const value = Number(clean.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}

/** A date and time of a record, short. */
export function when(iso: string, withTime = true): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return iso;
  return new Intl.DateTimeFormat(LOCALES[settings().language], {
    dateStyle: 'medium',
    ...(withTime ? { timeStyle: 'short' as const } : {}),
  }).format(date);
}
