import type { SVGTemplateResult, TemplateResult } from 'lit';

/** One place the cursor can stand: where it is drawn (chart pixels), and what is true there. */
export interface ChartStop {
  readonly x: number;
  readonly y: number;
  /** The value in words with its unit, as read out and as shown on hover. */
  readonly says: string;
}

/** What a chart draws for a given width. Everything is in pixels, so type keeps its size at any width. */
export interface ChartPicture {
  readonly width: number;
  readonly height: number;
  readonly marks: SVGTemplateResult;
  /** In reading order: the right arrow key goes to the next one. */
  readonly stops: readonly ChartStop[];
  /** Whether the cursor is a line across the plot (a curve) or a ring (a point). */
  readonly cursor: 'line' | 'ring';
  /** Top and bottom of the plot area, for a line cursor. */
  readonly span: readonly [number, number];
}

/** The numbers behind a chart: the table under it and the CSV file. */
export interface ChartTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export type Marks = TemplateResult | SVGTemplateResult;
