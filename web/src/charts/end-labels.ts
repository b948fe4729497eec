import { type SVGTemplateResult, svg } from 'lit';
import { textWidth } from './axes.ts';

export interface EndLabel {
  readonly y: number;
  readonly text: string;
}

/** Moves labels apart to at least `gap` px, keeping their order and staying inside [top, bottom] where they fit. */
export function spread(labels: readonly EndLabel[], gap: number, top: number, bottom: number): EndLabel[] {
  const sorted = [...labels].sort((p, q) => p.y - q.y);
  const ys: number[] = [];
  for (const label of sorted) ys.push(Math.max(label.y, ys.length ? ys.at(-1)! + gap : top));
  for (let i = ys.length - 1, limit = bottom; i >= 0; i--, limit = ys[i + 1]! - gap)
    ys[i] = Math.min(ys[i]!, limit);
  return sorted.map((label, i) => ({ text: label.text, y: ys[i]! }));
}

/** px between a curve and its name. */
const GAP = 8;

/** px beside a plot of this width for the names at the ends of its curves: what the longest takes, at most a third. */
export function roomAtEnds(names: readonly string[], width: number): number {
  const longest = Math.max(...names.map(textWidth));
  return Math.min(Math.ceil(GAP + longest), Math.floor(width / 3));
}

/** Names written at the ends of their curves, so that no key has to be looked up. */
export function endLabels(
  x: number,
  labels: readonly EndLabel[],
  top: number,
  bottom: number,
): SVGTemplateResult {
  return svg`<g font-size="13" fill="currentColor">
    ${spread(labels, 16, top, bottom).map((l) => svg`<text x=${x} y=${l.y} dy="0.35em">${l.text}</text>`)}
  </g>`;
}
