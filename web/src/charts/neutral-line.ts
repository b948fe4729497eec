import { type SVGTemplateResult, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import { area } from 'd3-shape';
import { define } from '../parts/tl-element.ts';
import { chartWords } from '../text/charts.ts';
import { num } from '../text/numbers.ts';
import { bottomAxis, leftAxis } from './axes.ts';
import { ChartElement } from './chart-element.ts';
import { dot, pathThrough, stroke } from './curve.ts';
import { type Frame, NARROW, frameFor, shifted } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { linearTicks } from './ticks.ts';

/** About the width of a letter of 13 px, px: enough to know whether a name has room. */
const LETTER = 7.2;

/** The most neutral mix a palette has at one value. */
export interface NeutralStep {
  readonly value: number;
  readonly chroma: number;
  /** Signed lean, CIELAB units: positive is warm. */
  readonly lean: number;
  readonly paint: string;
  /** Share of each tube by mass, in the order of `tubes`, summing to 1. */
  readonly shares: readonly number[];
}

export interface NeutralTube {
  readonly label: string;
  readonly paint: string;
}

/** How cool and how warm one value can go, CIELAB units of lean. */
export interface LeanReach {
  readonly value: number;
  readonly coolest: { readonly lean: number; readonly paint: string };
  readonly warmest: { readonly lean: number; readonly paint: string };
}

/** The neutral line: how it leans at each value, and the tubes that make it, side by side on one value axis. */
export class NeutralLine extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    steps: { attribute: false },
    tubes: { attribute: false },
    reach: { attribute: false },
  };
  declare steps: readonly NeutralStep[];
  declare tubes: readonly NeutralTube[];
  /** Warm and cool sides of the line; may be empty. */
  declare reach: readonly LeanReach[];

  constructor() {
    super();
    this.steps = [];
    this.tubes = [];
    this.reach = [];
  }

  override picture(width: number): ChartPicture {
    const wide = width >= NARROW;
    const first = frameFor(wide ? width / 2 - 12 : width, 0.9);
    const second = wide ? shifted(first, width / 2 + 12, 0) : shifted(first, 0, first.height + 12);
    const t = chartWords();
    const y = scaleLinear([0, 10], [first.bottom, first.top]);
    const most =
      Math.max(
        4,
        ...this.steps.map((s) => Math.abs(s.lean)),
        ...this.reach.flatMap((r) => [Math.abs(r.warmest.lean), Math.abs(r.coolest.lean)]),
      ) * 1.08;
    const x = scaleLinear([-most, most], [first.left, first.right]);
    const marks = svg`
      ${bottomAxis(first, linearTicks(x, wide ? 6 : 4), t.leanAxis)} ${leftAxis(first, linearTicks(y, 10), t.value)}
      <line x1=${x(0)} x2=${x(0)} y1=${first.top} y2=${first.bottom} stroke="currentColor" stroke-width="1.5"></line>
      ${this.#sides(x, y)}
      ${stroke(this.steps.map((s) => [x(s.lean), y(s.value)]))}
      ${this.steps.map((s) => dot(x(s.lean), y(s.value), s.paint, 7))}
      ${this.#shares(second)}`;
    return {
      width,
      height: wide ? first.height : 2 * first.height + 12,
      marks,
      stops: this.steps.map((s) => ({ x: x(s.lean), y: y(s.value), says: this.#says(s) })),
      cursor: 'ring',
      span: [first.top, first.bottom],
    };
  }

  #sides(x: (v: number) => number, y: (v: number) => number): SVGTemplateResult | typeof nothing {
    if (this.reach.length < 2) return nothing;
    const cool = this.reach.map((r) => [x(r.coolest.lean), y(r.value)] as const);
    const warm = this.reach.map((r) => [x(r.warmest.lean), y(r.value)] as const);
    return svg`<path d="${pathThrough([...cool, ...warm.toReversed()])}Z" fill="currentColor" fill-opacity="0.1"></path>
      ${this.reach.map(
        (r) => svg`${dot(x(r.coolest.lean), y(r.value), r.coolest.paint, 5)}
        ${dot(x(r.warmest.lean), y(r.value), r.warmest.paint, 5)}`,
      )}`;
  }

  #shares(f: Frame): SVGTemplateResult {
    const t = chartWords();
    const y = scaleLinear([0, 10], [f.bottom, f.top]);
    const x = scaleLinear([0, 100], [f.left, f.right]);
    const steps = [...this.steps].sort((p, q) => p.value - q.value);
    const edge = (s: NeutralStep, tubes: number): number =>
      x(100 * s.shares.slice(0, tubes).reduce((sum, v) => sum + v, 0));
    const layer = (i: number): string =>
      area<NeutralStep>()
        .y((s) => y(s.value))
        .x0((s) => edge(s, i))
        .x1((s) => edge(s, i + 1))(steps) ?? '';
    return svg`
      ${bottomAxis(f, linearTicks(x, 4), t.share)} ${leftAxis(f, linearTicks(y, 10), t.value)}
      ${
        steps.length > 1
          ? svg`${this.tubes.map((tube, i) => svg`<path d=${layer(i)} fill=${tube.paint} stroke="currentColor" stroke-width="1"></path>`)}
            ${this.tubes.map((tube, i) => this.#name(tube, i, steps, edge, y))}`
          : nothing
      }`;
  }

  /** A layer's name, where it is widest and has the room; read on any paint, for it carries its own edge. */
  #name(
    { label }: NeutralTube,
    i: number,
    steps: readonly NeutralStep[],
    edge: (s: NeutralStep, tubes: number) => number,
    y: (value: number) => number,
  ): SVGTemplateResult | typeof nothing {
    // A name at the very top or bottom would stand on the frame.
    const inner = steps.slice(1, -1);
    const wide = (s: NeutralStep): number => edge(s, i + 1) - edge(s, i);
    const at = inner.toSorted((p, q) => wide(q) - wide(p))[0];
    if (!at || wide(at) < LETTER * label.length + 8) return nothing;
    return svg`<text x=${(edge(at, i) + edge(at, i + 1)) / 2} y=${y(at.value)} dy="0.35em" font-size="13"
      text-anchor="middle" fill="#0b0b0b" stroke="#ececec" stroke-width="3" stroke-linejoin="round"
      paint-order="stroke">${label}</text>`;
  }

  #says(s: NeutralStep): string {
    const t = chartWords();
    const made = this.tubes
      .map((tube, i) => ({ label: tube.label, share: s.shares[i] ?? 0 }))
      .filter((m) => m.share > 0.0005)
      .map((m) => `${m.label} ${num(100 * m.share, 1)} %`)
      .join(', ');
    return `${t.valueShort} ${num(s.value, 1)}: ${t.chroma} ${num(s.chroma, 1)}, ${t.leanAt(num(s.lean, 1))}; ${made}${this.#sidesSay(s.value)}`;
  }

  #sidesSay(value: number): string {
    const t = chartWords();
    const r = this.reach.find((side) => Math.abs(side.value - value) < 0.05);
    return r ? `; ${t.cool} ${num(-r.coolest.lean, 0)}, ${t.warm} ${num(r.warmest.lean, 0)}` : '';
  }

  override table(): ChartTable {
    const t = chartWords();
    return {
      head: [t.value, t.chroma, t.lean, ...this.tubes.map((tube) => `${tube.label}, %`)],
      rows: this.steps.map((s) => [
        s.value,
        s.chroma,
        s.lean,
        ...this.tubes.map((_, i) => 100 * (s.shares[i] ?? 0)),
      ]),
    };
  }
}

define('tl-neutral-line', NeutralLine);
