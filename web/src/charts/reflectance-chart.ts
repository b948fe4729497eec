import { nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import { bottomAxis, leftAxis } from './axes.ts';
import { define } from '../parts/tl-element.ts';
import { ChartElement } from './chart-element.ts';
import { chartWords } from '../text/charts.ts';
import { type Point, band, dot, stroke, whisker } from './curve.ts';
import { endLabels, roomAtEnds } from './end-labels.ts';
import { curveHeight, frameFor } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { num } from '../text/numbers.ts';
import { linearTicks } from './ticks.ts';

/** One reflectance: a predicted curve with its interval, readings as points, or both. Reflectance factor 0..1. */
export interface ReflectanceSeries {
  readonly label: string;
  /** CSS colour of the paint. */
  readonly paint?: string;
  readonly curve?: {
    readonly nm: readonly number[];
    readonly r: readonly number[];
    readonly low?: readonly number[];
    readonly high?: readonly number[];
  };
  readonly points?: {
    readonly nm: readonly number[];
    readonly r: readonly number[];
    readonly sigma?: readonly number[];
  };
}

/** Reflectance against wavelength, with 95 % bands and measured points. */
export class ReflectanceChart extends ChartElement {
  static override properties = { ...ChartElement.properties, series: { attribute: false } };
  declare series: readonly ReflectanceSeries[];

  constructor() {
    super();
    this.series = [];
  }

  override picture(width: number): ChartPicture {
    const labelled = this.series.length > 1;
    const f = frameFor(width, 0.5, {
      tall: curveHeight(width),
      ...(labelled
        ? {
            right: roomAtEnds(
              this.series.map((s) => s.label),
              width,
            ),
          }
        : {}),
    });
    const nms = this.series.flatMap((s) => [...(s.curve?.nm ?? []), ...(s.points?.nm ?? [])]);
    const values = this.series.flatMap((s) => [
      ...(s.curve?.high ?? s.curve?.r ?? []),
      ...(s.points?.r ?? []),
    ]);
    const top = Math.max(0.1, ...values.filter(Number.isFinite));
    const x = scaleLinear([Math.min(380, ...nms), Math.max(730, ...nms)], [f.left, f.right]);
    const y = scaleLinear([0, top > 0.7 ? Math.max(1, top) : top * 1.08], [f.bottom, f.top]).nice(
      top > 0.7 ? 5 : 4,
    );
    const at = (nm: readonly number[], r: readonly number[]): Point[] => nm.map((w, i) => [x(w), y(r[i]!)]);
    const marks = svg`
      ${bottomAxis(f, linearTicks(x), chartWords().wavelength)}
      ${leftAxis(f, linearTicks(y), chartWords().reflectance)}
      ${this.series.map(
        ({ curve, points, paint }) => svg`
        ${curve?.low && curve.high ? band(at(curve.nm, curve.low), at(curve.nm, curve.high)) : nothing}
        ${curve ? stroke(at(curve.nm, curve.r), paint) : nothing}
        ${points?.nm.map(
          (w, i) => svg`
          ${points.sigma ? whisker(x(w), y(points.r[i]! + 2 * points.sigma[i]!), y(points.r[i]! - 2 * points.sigma[i]!)) : nothing}
          ${dot(x(w), y(points.r[i]!), paint, points.nm.length > 20 ? 3 : 5)}`,
        )}`,
      )}
      ${labelled ? endLabels(f.right + 8, this.#ends(y), f.top, f.bottom) : nothing}`;
    const stops = this.#wavelengths().map((nm) => ({ x: x(nm), y: f.top, says: this.#says(nm) }));
    return { width: f.width, height: f.height, marks, stops, cursor: 'line', span: [f.top, f.bottom] };
  }

  protected override key(): string {
    return this.series.some((s) => s.curve?.low && s.points) ? chartWords().curveKey : '';
  }

  override table(): ChartTable {
    const columns = this.series.flatMap(columnsOf);
    return {
      head: [chartWords().wavelength, ...columns.map((c) => c.head)],
      rows: this.#wavelengths().map((nm) => [nm, ...columns.map((c) => c.at(nm) ?? '')]),
    };
  }

  #ends(y: (v: number) => number): { y: number; text: string }[] {
    return this.series.map((s) => ({ y: y((s.curve ?? s.points)!.r.at(-1)!), text: s.label }));
  }

  #wavelengths(): number[] {
    const all = new Set(this.series.flatMap((s) => [...(s.curve?.nm ?? []), ...(s.points?.nm ?? [])]));
    return [...all].sort((p, q) => p - q);
  }

  #says(nm: number): string {
    const parts = this.series.flatMap(({ label, curve, points }) => {
      const c = curve ? curve.nm.indexOf(nm) : -1;
      const p = points ? points.nm.indexOf(nm) : -1;
      const said: string[] = [];
      if (c >= 0) {
        const half = curve!.high && curve!.low ? (curve!.high[c]! - curve!.low[c]!) / 2 : undefined;
        said.push(`${num(curve!.r[c]!, 3)}${half === undefined ? '' : ` ± ${num(half, 3)}`}`);
      }
      if (p >= 0) said.push(`${chartWords().read} ${num(points!.r[p]!, 3)}`);
      return said.length > 0 ? [`${label} ${said.join(', ')}`] : [];
    });
    return `${num(nm, 0)} nm: ${parts.join('; ')}`;
  }
}

interface Column {
  readonly head: string;
  readonly at: (nm: number) => number | undefined;
}

function columnsOf({ label, curve, points }: ReflectanceSeries): Column[] {
  const column = (head: string, nm: readonly number[], v: readonly number[]): Column => ({
    head,
    at: (w) => v[nm.indexOf(w)],
  });
  return [
    ...(curve ? [column(label, curve.nm, curve.r)] : []),
    ...(curve?.low && curve.high
      ? [
          column(`${label} ${chartWords().low}`, curve.nm, curve.low),
          column(`${label} ${chartWords().high}`, curve.nm, curve.high),
        ]
      : []),
    ...(points ? [column(`${label} ${chartWords().read}`, points.nm, points.r)] : []),
  ];
}

define('tl-reflectance-chart', ReflectanceChart);
