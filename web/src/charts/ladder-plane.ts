import { type SVGTemplateResult, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import { define } from '../parts/tl-element.ts';
import { chartWords } from '../text/charts.ts';
import { num } from '../text/numbers.ts';
import { bottomAxis, leftAxis } from './axes.ts';
import { ChartElement } from './chart-element.ts';
import { dot, stroke } from './curve.ts';
import { type Frame, NARROW, frameFor, panelWidth, shifted } from './frame.ts';
import type { ChartPicture, ChartStop, ChartTable } from './model.ts';
import { linearTicks } from './ticks.ts';

/** One rung in CIELAB (D65/10deg), with its value. */
export interface LadderPoint {
  readonly label: string;
  readonly paint: string;
  readonly a: number;
  readonly b: number;
  /** Munsell value, 0..10. */
  readonly value: number;
}

/**
 * A ladder as a path through colour: a* b* seen from above, and value against chroma from the side. Predicted path as a
 * line, what was read as marks.
 */
export class LadderPlane extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    read: { attribute: false },
    path: { attribute: false },
  };
  declare read: readonly LadderPoint[];
  declare path: readonly LadderPoint[];

  constructor() {
    super();
    this.read = [];
    this.path = [];
  }

  override picture(width: number): ChartPicture {
    const side = panelWidth(width);
    const above = frameFor(side, 1);
    const beside: Frame =
      width >= NARROW ? shifted(above, side + 24, 0) : shifted(above, 0, above.height + 16);
    const one = this.#above(above);
    const two = this.#beside(beside);
    const height = width >= NARROW ? above.height : 2 * above.height + 16;
    return {
      width,
      height,
      marks: svg`${one.marks}${two.marks}`,
      stops: one.stops,
      cursor: 'ring',
      span: [above.top, above.bottom],
    };
  }

  #above(f: Frame): { marks: SVGTemplateResult; stops: ChartStop[] } {
    const all = [...this.read, ...this.path, { a: 0, b: 0 }];
    const reach = (pick: (p: { a: number; b: number }) => number): [number, number] => [
      Math.min(...all.map(pick)),
      Math.max(...all.map(pick)),
    ];
    const [a0, a1] = reach((p) => p.a);
    const [b0, b1] = reach((p) => p.b);
    const half = Math.max(8, ((a1 - a0) / 2) * 1.12, ((b1 - b0) / 2) * 1.12);
    const x = scaleLinear([(a0 + a1) / 2 - half, (a0 + a1) / 2 + half], [f.left, f.right]);
    const tall = (half * (f.bottom - f.top)) / (f.right - f.left);
    const y = scaleLinear([(b0 + b1) / 2 - tall, (b0 + b1) / 2 + tall], [f.bottom, f.top]);
    const marks = svg`
      ${bottomAxis(f, linearTicks(x), chartWords().aStar)} ${leftAxis(f, linearTicks(y), chartWords().bStar)}
      <line x1=${x(0)} x2=${x(0)} y1=${f.top} y2=${f.bottom} stroke="currentColor"></line>
      <line x1=${f.left} x2=${f.right} y1=${y(0)} y2=${y(0)} stroke="currentColor"></line>
      ${this.path.length ? stroke(this.path.map((p) => [x(p.a), y(p.b)])) : nothing}
      ${this.read.map((p) => dot(x(p.a), y(p.b), p.paint, 8))}`;
    return { marks, stops: this.read.map((p) => ({ x: x(p.a), y: y(p.b), says: says(p) })) };
  }

  #beside(f: Frame): { marks: SVGTemplateResult } {
    const chroma = (p: LadderPoint): number => Math.hypot(p.a, p.b);
    const most = Math.max(10, ...[...this.read, ...this.path].map(chroma));
    const x = scaleLinear([0, most * 1.08], [f.left, f.right]);
    const y = scaleLinear([0, 10], [f.bottom, f.top]);
    return {
      marks: svg`
        ${bottomAxis(f, linearTicks(x), chartWords().chroma)} ${leftAxis(f, linearTicks(y, 5), chartWords().value)}
        ${this.path.length ? stroke(this.path.map((p) => [x(chroma(p)), y(p.value)])) : nothing}
        ${this.read.map((p) => dot(x(chroma(p)), y(p.value), p.paint, 8))}
        ${this.#ends().map(({ p, below }) => name(p.label, x(chroma(p)), y(p.value), below, f))}`,
    };
  }

  /** The darkest rung is named below its mark, the lightest above: nothing else stands there. */
  #ends(): { readonly p: LadderPoint; readonly below: boolean }[] {
    const sorted = this.read.toSorted((p, q) => p.value - q.value);
    const [darkest, lightest] = [sorted[0], sorted.at(-1)];
    if (!darkest || !lightest || darkest === lightest) return [];
    return [
      { p: darkest, below: true },
      { p: lightest, below: false },
    ];
  }

  protected override key(): string {
    return this.path.length > 0 ? chartWords().planeKey : '';
  }

  override table(): ChartTable {
    return {
      head: [chartWords().rung, chartWords().value, 'a*', 'b*', chartWords().chroma],
      rows: this.read.map((p) => [p.label, p.value, p.a, p.b, Math.hypot(p.a, p.b)]),
    };
  }
}

/** A rung's name, turned inwards so that it stays inside the plot; beside its mark where the axis is near below. */
function name(label: string, x: number, markAt: number, below: boolean, f: Frame): SVGTemplateResult {
  const after = x < (f.left + f.right) / 2;
  const beside = below && markAt + 32 > f.bottom;
  const y = markAt + (beside ? 0 : below ? 24 : -16);
  const off = beside ? -14 : 8;
  return svg`<text x=${x + (after ? -off : off)} y=${y} dy="0.35em" font-size="13" fill="currentColor"
    text-anchor=${after ? 'start' : 'end'}>${label}</text>`;
}

function says(p: LadderPoint): string {
  const t = chartWords();
  return `${p.label}: ${t.valueShort} ${num(p.value, 1)}, a* ${num(p.a, 1)}, b* ${num(p.b, 1)}, ${t.chroma} ${num(Math.hypot(p.a, p.b), 1)}`;
}

define('tl-ladder-plane', LadderPlane);
