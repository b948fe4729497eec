import { nothing, svg } from 'lit';
import { scaleLinear, scaleTime } from 'd3-scale';
import { bottomAxis, leftAxis } from './axes.ts';
import { define } from '../parts/tl-element.ts';
import { ChartElement } from './chart-element.ts';
import { chartWords } from '../text/charts.ts';
import { type ControlLimits, controlLimits } from './control-limits.ts';
import { dot, stroke } from './curve.ts';
import { frameFor } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { when } from '../text/numbers.ts';
import { significant } from './numbers.ts';
import { linearTicks } from './ticks.ts';

/** One re-reading of the check tile. */
export interface ControlPoint {
  readonly when: Date;
  readonly value: number;
}

/** Room for one date. */
const LABEL_PX = 96;

/** A check tile's readings over time with the limits its own scatter sets; a reading outside them is ringed. */
export class ControlChart extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    points: { attribute: false },
    limits: { attribute: false },
    unit: {},
  };
  declare points: readonly ControlPoint[];
  /** Limits drawn from elsewhere, such as from all sessions but the last; absent: from the points themselves. */
  declare limits: ControlLimits | undefined;
  /** Title of the upright axis with its unit. */
  declare unit: string;

  constructor() {
    super();
    this.points = [];
    this.limits = undefined;
    this.unit = '';
  }

  override picture(width: number): ChartPicture {
    const f = frameFor(width, 0.36);
    const limits = this.limits ?? controlLimits(this.points.map((p) => p.value));
    const levels = limits ? [limits.lower, limits.centre, limits.upper] : [];
    const values = [...this.points.map((p) => p.value), ...levels];
    const low = Math.min(...values, Infinity);
    const high = Math.max(...values, -Infinity);
    const pad = (high - low) * 0.08 || Math.abs(high) * 0.02 || 1;
    const times = this.points.map((p) => p.when.getTime());
    const x = scaleTime([Math.min(...times), Math.max(...times)], [f.left + 10, f.right - 10]);
    const y = scaleLinear(values.length ? [low - pad, high + pad] : [0, 1], [f.bottom, f.top]);
    const outside = (v: number): boolean => !!limits && (v < limits.lower || v > limits.upper);
    let roomFrom = 0;
    const marks = svg`
      ${bottomAxis(
        f,
        days(this.points).flatMap(({ at, text }, i, all) => {
          const place = x(at);
          // Each day once, the last one always, and none over another.
          const crowded = place > x(all.at(-1)!.at) - LABEL_PX && i < all.length - 1;
          const room = place >= roomFrom && !crowded;
          if (room) roomFrom = place + LABEL_PX;
          return room ? [{ at: place, text }] : [];
        }),
        chartWords().date,
      )}
      ${leftAxis(f, linearTicks(y, 4), this.unit)}
      ${levels.map(
        (v, i) => svg`<line x1=${f.left} x2=${f.right} y1=${y(v)} y2=${y(v)} stroke="currentColor"
        stroke-width="1.5" stroke-dasharray=${i === 1 ? nothing : '6 4'}></line>`,
      )}
      ${stroke(this.points.map((p) => [x(p.when), y(p.value)]))}
      ${this.points.map(
        (p) => svg`
        ${dot(x(p.when), y(p.value), 'currentColor', 4)}
        ${outside(p.value) ? dot(x(p.when), y(p.value), undefined, 9) : nothing}`,
      )}`;
    const stops = this.points.map((p) => ({
      x: x(p.when),
      y: y(p.value),
      says: `${when(p.when.toISOString())}: ${significant(p.value, 4)}${outside(p.value) ? `, ${chartWords().outside}` : ''}`,
    }));
    return { width: f.width, height: f.height, marks, stops, cursor: 'ring', span: [f.top, f.bottom] };
  }

  protected override key(): string {
    return this.points.length > 1 ? chartWords().controlKey : '';
  }

  override table(): ChartTable {
    return {
      head: [chartWords().date, this.unit],
      rows: this.points.map((p) => [`${p.when.toISOString().slice(0, 19)}Z`, p.value]),
    };
  }
}

/** The first reading of each day, oldest first. */
function days(points: readonly ControlPoint[]): { at: Date; text: string }[] {
  const found = new Map<string, Date>();
  for (const point of points) {
    const text = when(point.when.toISOString(), false);
    if (!found.has(text)) found.set(text, point.when);
  }
  return [...found].map(([text, at]) => ({ at, text }));
}

define('tl-control-chart', ControlChart);
