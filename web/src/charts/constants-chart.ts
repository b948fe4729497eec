import { nothing, svg } from 'lit';
import { scaleLinear, scaleLog } from 'd3-scale';
import { bottomAxis, leftAxis } from './axes.ts';
import { define } from '../parts/tl-element.ts';
import { ChartElement } from './chart-element.ts';
import { chartWords } from '../text/charts.ts';
import type { ConstantCurve } from './constants-band.ts';
import { type Point, band, stroke } from './curve.ts';
import { endLabels } from './end-labels.ts';
import { NARROW, curveHeight, frameFor } from './frame.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { significant } from './numbers.ts';
import { linearTicks, logDomain, logTicks } from './ticks.ts';

/** One tube's K and S, on the same wavelengths. */
export interface ConstantsSeries {
  readonly label: string;
  readonly paint?: string;
  readonly K: ConstantCurve;
  readonly S: ConstantCurve;
}

const DASH = '7 4';

/**
 * K (full stroke) and S (broken ink line) on one log axis: the distance between them is the ratio K/S that sets the
 * masstone. Both are relative to the white's scattering.
 */
export class ConstantsChart extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    nm: { attribute: false },
    series: { attribute: false },
  };
  declare nm: readonly number[];
  declare series: readonly ConstantsSeries[];

  constructor() {
    super();
    this.nm = [];
    this.series = [];
  }

  override picture(width: number): ChartPicture {
    const many = this.series.length > 1;
    const f = frameFor(width, 0.62, {
      right: many ? (width < NARROW ? 64 : 110) : 34,
      tall: curveHeight(width),
    });
    const x = scaleLinear([this.nm[0] ?? 380, this.nm.at(-1) ?? 730], [f.left, f.right]);
    const all = this.series.flatMap((s) => [...s.K.low, ...s.K.high, ...s.S.low, ...s.S.high]);
    const y = scaleLog(logDomain(all), [f.bottom, f.top]).clamp(true);
    const at = (v: readonly number[]): Point[] => this.nm.map((w, i) => [x(w), y(v[i]!)]);
    const ends = this.series.flatMap((s) => {
      const name = (what: 'K' | 'S'): string => (many ? `${what} ${s.label}` : what);
      return [
        { y: y(s.K.value.at(-1)!), text: name('K') },
        { y: y(s.S.value.at(-1)!), text: name('S') },
      ];
    });
    const marks = svg`
      ${bottomAxis(f, linearTicks(x), chartWords().wavelength)}
      ${leftAxis(f, logTicks(y), chartWords().constants)}
      ${this.series.map(
        (s) => svg`
        ${band(at(s.S.low), at(s.S.high), 0.13)} ${band(at(s.K.low), at(s.K.high))}
        ${stroke(at(s.S.value), undefined, DASH)} ${stroke(at(s.K.value), s.paint)}`,
      )}
      ${this.series.length ? endLabels(f.right + 8, ends, f.top, f.bottom) : nothing}`;
    const stops = this.nm.map((nm, i) => ({ x: x(nm), y: f.top, says: this.#says(i) }));
    return { width: f.width, height: f.height, marks, stops, cursor: 'line', span: [f.top, f.bottom] };
  }

  protected override key(): string {
    return chartWords().bandKey;
  }

  override table(): ChartTable {
    const three = (label: string): string[] => [
      label,
      `${label} ${chartWords().low}`,
      `${label} ${chartWords().high}`,
    ];
    return {
      head: [
        chartWords().wavelength,
        ...this.series.flatMap((s) => [...three(`K ${s.label}`), ...three(`S ${s.label}`)]),
      ],
      rows: this.nm.map((nm, i) => [
        nm,
        ...this.series.flatMap(({ K, S }) => [K, S].flatMap((c) => [c.value[i]!, c.low[i]!, c.high[i]!])),
      ]),
    };
  }

  #says(i: number): string {
    const interval = (c: ConstantCurve): string =>
      `${significant(c.value[i]!)} (${significant(c.low[i]!)} – ${significant(c.high[i]!)})`;
    const parts = this.series.map(
      (s) => `${this.series.length > 1 ? `${s.label}: ` : ''}K ${interval(s.K)}, S ${interval(s.S)}`,
    );
    return `${this.nm[i]} nm: ${parts.join('; ')}`;
  }
}

define('tl-constants-chart', ConstantsChart);
