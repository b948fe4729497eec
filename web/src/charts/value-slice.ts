import { nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import { define } from '../parts/tl-element.ts';
import { chartWords } from '../text/charts.ts';
import { num } from '../text/numbers.ts';
import { bottomAxis, leftAxis } from './axes.ts';
import { ChartElement } from './chart-element.ts';
import { dot, pathThrough } from './curve.ts';
import { frameFor } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { linearTicks } from './ticks.ts';

/** A colour on a slice. */
export interface SlicePoint {
  readonly label: string;
  readonly paint: string;
  readonly a: number;
  readonly b: number;
}

/** What a palette reaches at one value: the edge of the region in a* b*, with colours along it and marks inside. */
export class ValueSlice extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    edge: { attribute: false },
    inside: { attribute: false },
    reach: { type: Number },
  };
  /** In order around the region. */
  declare edge: readonly SlicePoint[];
  declare inside: readonly SlicePoint[];
  /** Half the width of both axes, CIELAB units, held still while the value changes. */
  declare reach: number;

  constructor() {
    super();
    this.edge = [];
    this.inside = [];
    this.reach = 60;
  }

  override picture(width: number): ChartPicture {
    const f = frameFor(Math.min(width, 560), 1);
    const x = scaleLinear([-this.reach, this.reach], [f.left, f.right]);
    const tall = (this.reach * (f.bottom - f.top)) / (f.right - f.left);
    const y = scaleLinear([-tall, tall], [f.bottom, f.top]);
    const t = chartWords();
    const all = [...this.edge, ...this.inside];
    const marks = svg`
      ${bottomAxis(f, linearTicks(x, 6), t.aStar)} ${leftAxis(f, linearTicks(y, 6), t.bStar)}
      <path d="M${x(0)} ${f.top}V${f.bottom}M${f.left} ${y(0)}H${f.right}" stroke="currentColor" fill="none"></path>
      ${this.edge.length > 2 ? svg`<path d="${pathThrough(this.edge.map((p) => [x(p.a), y(p.b)]))}Z" fill="currentColor" fill-opacity="0.1" stroke="currentColor" stroke-width="1.5"></path>` : nothing}
      ${all.map((p) => dot(x(p.a), y(p.b), p.paint, 7))}`;
    return {
      width: f.width,
      height: f.height,
      marks,
      stops: all.map((p) => ({
        x: x(p.a),
        y: y(p.b),
        says: `${p.label}: a* ${num(p.a, 1)}, b* ${num(p.b, 1)}, ${t.chroma} ${num(Math.hypot(p.a, p.b), 1)}`,
      })),
      cursor: 'ring',
      span: [f.top, f.bottom],
    };
  }

  override table(): ChartTable {
    return {
      head: [chartWords().name, 'a*', 'b*', chartWords().chroma],
      rows: [...this.edge, ...this.inside].map((p) => [p.label, p.a, p.b, Math.hypot(p.a, p.b)]),
    };
  }
}

define('tl-value-slice', ValueSlice);
