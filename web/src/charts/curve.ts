import { type SVGTemplateResult, nothing, svg } from 'lit';
import { area, line } from 'd3-shape';

export type Point = readonly [x: number, y: number];

const path = line<Point>()
  .x((p) => p[0])
  .y((p) => p[1])
  .defined((p) => Number.isFinite(p[0]) && Number.isFinite(p[1]));

/** SVG path through points; a point that is not a number leaves a gap. */
export function pathThrough(points: readonly Point[]): string {
  return path([...points]) ?? '';
}

/**
 * A curve as a brush stroke: the paint's colour cased in ink, so that pale paint shows on a pale page and dark paint on
 * a dark one. Without a paint it is ink alone.
 */
export function stroke(points: readonly Point[], paint?: string, dash?: string): SVGTemplateResult {
  const d = pathThrough(points);
  return svg`<g fill="none" stroke-linejoin="round" stroke-linecap=${dash ? 'butt' : 'round'}>
    <path d=${d} stroke="currentColor" stroke-width=${paint ? 6.5 : 2} stroke-dasharray=${dash ?? nothing}></path>
    ${paint ? svg`<path d=${d} stroke=${paint} stroke-width="4"></path>` : nothing}
  </g>`;
}

/** An interval around a curve, as a veil of ink. */
export function band(low: readonly Point[], high: readonly Point[], opacity = 0.17): SVGTemplateResult {
  const shape = area<number>()
    .x((i) => low[i]![0])
    .y0((i) => low[i]![1])
    .y1((i) => high[i]![1]);
  return svg`<path d=${shape(low.map((_, i) => i)) ?? ''} fill="currentColor" fill-opacity=${opacity}></path>`;
}

/** A mark at a measured point: paint colour with an ink rim; hollow without one. */
export function dot(x: number, y: number, paint?: string, r = 5): SVGTemplateResult {
  return svg`<circle cx=${x} cy=${y} r=${r} fill=${paint ?? 'none'} stroke="currentColor" stroke-width="1.5"></circle>`;
}

/** A short vertical whisker for an interval at a point. */
export function whisker(x: number, low: number, high: number): SVGTemplateResult {
  return svg`<path d="M${x} ${low}V${high}M${x - 4} ${low}h8M${x - 4} ${high}h8" stroke="currentColor" fill="none" stroke-width="1.2"></path>`;
}
