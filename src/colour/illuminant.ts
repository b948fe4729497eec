import { say } from './sentences.ts';

/** CIE standard illuminants and illuminants for which tristimulus weights are carried. */
export const ILLUMINANTS = ['A', 'C', 'D50', 'D55', 'D65', 'D75', 'FL2', 'FL7', 'FL11', 'LED-B3'] as const;
export type Illuminant = (typeof ILLUMINANTS)[number];

/** CIE standard colorimetric observers: 1931 (2 degrees) and 1964 (10 degrees). */
export const OBSERVERS = ['2deg', '10deg'] as const;
export type Observer = (typeof OBSERVERS)[number];

/** Names one white: the perfect diffuser under an illuminant, seen by an observer. */
export type WhiteName = `${Illuminant}/${Observer}`;

/** What the program shows and compares in unless asked otherwise. */
export const DEFAULT_WHITE = 'D65/10deg' satisfies WhiteName;

/** Splits a white's name. */
export function whiteParts(white: WhiteName): { illuminant: Illuminant; observer: Observer } {
  const at = white.lastIndexOf('/');
  return { illuminant: white.slice(0, at) as Illuminant, observer: white.slice(at + 1) as Observer };
}

/**
 * Reads what people write: "D65", "d65/10", "D65/2deg", "2", "10deg".
 * @throws RangeError naming what is allowed.
 */
export function parseWhiteName(illuminant: string, observer: string): WhiteName {
  const i = ILLUMINANTS.find((name) => name.toLowerCase() === illuminant.trim().toLowerCase());
  if (!i) {
    throw new RangeError(say('illuminant', { illuminant, known: ILLUMINANTS.join(', ') }));
  }
  const o = { '2': '2deg', '10': '10deg' }[
    observer
      .trim()
      .toLowerCase()
      .replace(/\s*(deg|degrees?|°)$/, '')
  ];
  if (!o) throw new RangeError(say('observer', { observer }));
  return `${i}/${o as Observer}`;
}
