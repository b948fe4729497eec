import { svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import { define } from '../parts/tl-element.ts';
import { chartWords } from '../text/charts.ts';
import { num } from '../text/numbers.ts';
import { bottomAxis, leftAxis } from './axes.ts';
import { ChartElement } from './chart-element.ts';
import { NARROW, frameFor } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { linearTicks } from './ticks.ts';

/** The strongest colour of one hue. */
export interface HueReachPoint {
  /** CIELAB hue angle, degrees. */
  readonly hue: number;
  readonly chroma: number;
  /** Munsell value at which it is that strong. */
  readonly value: number;
  readonly paint: string;
  readonly recipe: string;
}

/** The strongest colour a palette has in each hue, as pulls standing side by side. */
export class HueReach extends ChartElement {
  static override properties = { ...ChartElement.properties, points: { attribute: false } };
  declare points: readonly HueReachPoint[];

  constructor() {
    super();
    this.points = [];
  }

  override picture(width: number): ChartPicture {
    const f = frameFor(width, 0.34);
    const t = chartWords();
    const x = scaleLinear([0, 360], [f.left, f.right]);
    const most = Math.max(20, ...this.points.map((p) => p.chroma));
    const y = scaleLinear([0, most * 1.05], [f.bottom, f.top]).nice(5);
    const step = this.points.length > 0 ? 360 / this.points.length : 15;
    const wide = (f.right - f.left) / (360 / step);
    const degrees = (width < NARROW ? [0, 90, 180, 270, 360] : [0, 60, 120, 180, 240, 300, 360]).map((h) => ({
      at: x(h),
      text: num(h, 0),
    }));
    const left = (p: HueReachPoint): number => x(p.hue);
    const marks = svg`
      ${bottomAxis(f, degrees, t.hue)} ${leftAxis(f, linearTicks(y, 4), t.chroma)}
      ${this.points.map((p) => svg`<rect x=${left(p)} y=${y(p.chroma)} width=${wide + 0.3} height=${f.bottom - y(p.chroma)} fill=${p.paint}></rect>`)}
      <line x1=${f.left} x2=${f.right} y1=${f.bottom} y2=${f.bottom} stroke="currentColor"></line>`;
    const stops = this.points.map((p) => ({
      x: left(p) + wide / 2,
      y: y(p.chroma),
      says: `${t.hueAt(num(p.hue, 0))}: ${t.chroma} ${num(p.chroma, 0)}, ${t.valueShort} ${num(p.value, 1)}; ${p.recipe}`,
    }));
    return { width: f.width, height: f.height, marks, stops, cursor: 'line', span: [f.top, f.bottom] };
  }

  override table(): ChartTable {
    const t = chartWords();
    return {
      head: [t.hue, t.chroma, t.value, t.name],
      rows: this.points.map((p) => [p.hue, p.chroma, p.value, p.recipe]),
    };
  }
}
define('tl-hue-reach', HueReach);
