/**
 * Numbers typed or pasted by a person: separated by spaces, tabs, line ends, semicolons, or commas; with a decimal
 * point or a decimal comma. What a comma means is told from the whole text, and refused when it cannot be.
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

export interface NumberList {
  readonly numbers: number[];
  /** How commas were read, when there were any; empty otherwise. */
  readonly assumed: readonly string[];
}

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?$/i;

/**
 * Reads the numbers in a text.
 * @throws ReadingRefused `entry` naming what is no number, or a comma that can be read two ways
 */
export function readNumberList(text: string): NumberList {
  // Typographic minus and per cent signs come with pasting.
  const plain = text.replaceAll('−', '-').replaceAll('%', ' ').trim();
  if (plain === '') throw new ReadingRefused('entry', say('no-number'));
  // A comma before a space separates; what stays inside a token is a decimal comma or a separator.
  const tokens = plain.split(/,?[\s;]+|,$/).filter((t) => t !== '');
  const withComma = tokens.filter((t) => t.includes(','));
  if (withComma.length === 0) return { numbers: tokens.map(toNumber), assumed: [] };
  const points = tokens.some((t) => t.includes('.'));
  if (points) {
    return {
      numbers: tokens.flatMap((t) => t.split(',')).map(toNumber),
      assumed: [say('point-decimal')],
    };
  }
  const several = withComma.find((t) => t.split(',').length > 2);
  if (several !== undefined) {
    throw new ReadingRefused('entry', say('two-ways', { text: several.slice(0, 40) }));
  }
  return {
    numbers: tokens.map(toNumber),
    assumed: [say('comma-decimal')],
  };
}

function toNumber(token: string): number {
  if (!NUMBER.test(token)) {
    throw new ReadingRefused('entry', say('odd-token', { text: token.slice(0, 40) }));
  }
  return Number(token.replace(',', '.'));
}

/**
 * Reads pairs of wavelength and value, one after the other or one a line.
 * @throws ReadingRefused `entry` when they do not pair up
 */
export function readPairs(text: string): {
  wavelengths: number[];
  values: number[];
  assumed: readonly string[];
} {
  const { numbers, assumed } = readNumberList(text);
  if (numbers.length % 2 !== 0) {
    throw new ReadingRefused('entry', say('unpaired', { count: numbers.length }));
  }
  return {
    wavelengths: numbers.filter((_, i) => i % 2 === 0),
    values: numbers.filter((_, i) => i % 2 === 1),
    assumed,
  };
}
