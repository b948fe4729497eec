/** Names of rungs: "masstone", or parts of paint to parts of white by mass, "1:4". */
import { say } from './sentences.ts';

export interface RungParts {
  readonly paint: number;
  readonly white: number;
}

/**
 * Reads a rung's name: "masstone", "1:4", "2 : 3", "1:2,5"; `undefined` for anything else.
 */
export function parseRungName(name: string): RungParts | undefined {
  const text = name.trim().toLowerCase();
  if (text === 'masstone') return { paint: 1, white: 0 };
  const found = /^(\d+(?:[.,]\d+)?)\s*:\s*(\d+(?:[.,]\d+)?)$/.exec(text);
  if (!found) return undefined;
  const [paint, white] = [found[1]!, found[2]!].map((n) => Number(n.replace(',', '.'))) as [number, number];
  return paint > 0 ? { paint, white } : undefined;
}

/** Name for parts of white to one part of paint: 0 is "masstone", 4 is "1:4", 0.5 is "2:1". */
export function rungName(whiteParts: number): string {
  if (!(whiteParts >= 0 && Number.isFinite(whiteParts))) {
    throw new RangeError(say('white-parts', { parts: whiteParts }));
  }
  if (whiteParts === 0) return 'masstone';
  const inverse = 1 / whiteParts;
  if (whiteParts < 1 && Math.abs(inverse - Math.round(inverse)) < 1e-9) return `${Math.round(inverse)}:1`;
  return `1:${Number(whiteParts.toPrecision(4))}`;
}
