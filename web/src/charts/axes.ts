import { type SVGTemplateResult, nothing, svg } from 'lit';
import type { Frame } from './frame.ts';

/** One tick: where (px along the axis) and what is written. */
export interface Tick {
  readonly at: number;
  readonly text: string;
  /** Drawn as a hair only, without a number: the steps between decades of a log axis. */
  readonly minor?: boolean;
}

/** px a letter of the axes takes, on the wide side: figures and capitals. */
const LETTER = 7.5;

/** About how wide a text in a chart stands, px. */
export const textWidth = (text: string): number => text.length * LETTER;

const GRID = 0.16;
const MINOR = 0.07;
const RULE = 0.7;

/** Axis below the plot with a title that carries its unit. */
export function bottomAxis(f: Frame, ticks: readonly Tick[], title: string): SVGTemplateResult {
  return svg`<g class="axis" font-size="13" fill="currentColor" text-anchor="middle">
    ${ticks.map(
      (t) => svg`<line x1=${t.at} x2=${t.at} y1=${f.top} y2=${f.bottom} stroke="currentColor"
          stroke-opacity=${t.minor ? MINOR : GRID}></line>
        ${t.minor ? nothing : svg`<text x=${t.at} y=${f.bottom + 18}>${t.text}</text>`}`,
    )}
    <line x1=${f.left} x2=${f.right} y1=${f.bottom} y2=${f.bottom} stroke="currentColor" stroke-opacity=${RULE}></line>
    <text x=${f.right} y=${f.bottom + 38} text-anchor="end">${title}</text>
  </g>`;
}

/** Axis left of the plot; its title lies flat above it, where it is read without turning the head. */
export function leftAxis(f: Frame, ticks: readonly Tick[], title: string): SVGTemplateResult {
  return svg`<g class="axis" font-size="13" fill="currentColor" text-anchor="end">
    ${ticks.map(
      (t) => svg`<line x1=${f.left} x2=${f.right} y1=${t.at} y2=${t.at} stroke="currentColor"
          stroke-opacity=${t.minor ? MINOR : GRID}></line>
        ${t.minor ? nothing : svg`<text x=${f.left - 8} y=${t.at} dy="0.35em">${t.text}</text>`}`,
    )}
    <line x1=${f.left} x2=${f.left} y1=${f.top} y2=${f.bottom} stroke="currentColor" stroke-opacity=${RULE}></line>
    <text x=${f.start ?? 0} y=${f.top - 16} text-anchor="start">${title}</text>
  </g>`;
}
