import { nothing, svg } from 'lit';
import { scaleLinear, scalePoint } from 'd3-scale';
import { bottomAxis, leftAxis, textWidth } from './axes.ts';
import { define } from '../parts/tl-element.ts';
import { ChartElement } from './chart-element.ts';
import { chartWords } from '../text/charts.ts';
import { dot } from './curve.ts';
import { NARROW, frameFor, panelWidth } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { num } from '../text/numbers.ts';
import { linearTicks } from './ticks.ts';

/** How far one rung lies from its readings. */
export interface RungResidual {
  readonly label: string;
  readonly paint?: string;
  /** CIEDE2000 of the fitted rung against its mean reading. */
  readonly deltaE00: number;
  /** The same, predicted from the other rungs alone. */
  readonly leftOut?: number;
}

/** One is about the least difference seen between two patches side by side. Common practice, no source. */
const JUST_VISIBLE = 1;

/** As tall as the panels of the ladder in colour, which stands beside it; but no taller on a phone. */
const planeHeight = (width: number): number => {
  if (width < NARROW) return 180;
  const panel = frameFor(panelWidth(width), 1);
  return panel.bottom - panel.top;
};

/** CIEDE2000 for each rung: full marks for the fit, hollow marks for the rung predicted by the others. */
export class ResidualChart extends ChartElement {
  static override properties = { ...ChartElement.properties, rungs: { attribute: false }, axis: {} };
  declare rungs: readonly RungResidual[];
  /** What the marks are, where they are not rungs. */
  declare axis: string;

  constructor() {
    super();
    this.rungs = [];
    this.axis = '';
  }

  override picture(width: number): ChartPicture {
    const f = frameFor(width, 0.34, this.axis ? {} : { tall: planeHeight(width) });
    const top = Math.max(2, ...this.rungs.flatMap((r) => [r.deltaE00, r.leftOut ?? 0]));
    const x = scalePoint(
      this.rungs.map((_, i) => i),
      [f.left, f.right],
    ).padding(0.5);
    const y = scaleLinear([0, top * 1.05], [f.bottom, f.top]).nice(4);
    const many = this.rungs.length > 24;
    const size = many ? 4 : 7;
    // As many names as stand beside each other with a gap between them.
    const widest = Math.max(...this.rungs.map((r) => textWidth(r.label))) + 12;
    const every = Math.ceil(widest / x.step());
    const ticks = this.rungs.map((r, i) => ({
      at: x(i)!,
      text: i % every || many ? '' : r.label,
      minor: many || i % every > 0,
    }));
    const marks = svg`
      ${bottomAxis(f, ticks, this.axis || chartWords().rung)}
      ${leftAxis(f, linearTicks(y, 4), `${chartWords().deltaE}; ${chartWords().justVisible}`)}
      <line x1=${f.left} x2=${f.right} y1=${y(JUST_VISIBLE)} y2=${y(JUST_VISIBLE)} stroke="currentColor"
        stroke-dasharray="2 4"></line>
      ${this.rungs.map(
        (r, i) => svg`
        <line x1=${x(i)!} x2=${x(i)!} y1=${f.bottom} y2=${y(r.deltaE00)} stroke="currentColor" stroke-width="2"></line>
        ${r.leftOut === undefined ? nothing : dot(x(i)!, y(r.leftOut), undefined, size)}
        ${dot(x(i)!, y(r.deltaE00), r.paint ?? 'currentColor', size)}`,
      )}`;
    const stops = this.rungs.map((r, i) => ({
      x: x(i)!,
      y: y(r.deltaE00),
      says: this.axis ? `${r.label}: ${num(r.deltaE00, 2)}` : says(r),
    }));
    return { width: f.width, height: f.height, marks, stops, cursor: 'ring', span: [f.top, f.bottom] };
  }

  protected override key(): string {
    return this.axis ? '' : chartWords().residualKey;
  }

  override table(): ChartTable {
    if (this.axis) {
      return { head: [this.axis, 'CIEDE2000'], rows: this.rungs.map((r) => [r.label, r.deltaE00]) };
    }
    return {
      head: [chartWords().rung, chartWords().fitted, chartWords().leftOut],
      rows: this.rungs.map((r) => [r.label, r.deltaE00, r.leftOut ?? '']),
    };
  }
}

function says(r: RungResidual): string {
  const out = r.leftOut === undefined ? '' : `; ${chartWords().leftOut} ${num(r.leftOut, 2)}`;
  return `${r.label}: ${chartWords().fitted} ${num(r.deltaE00, 2)}${out}`;
}

define('tl-residual-chart', ResidualChart);
