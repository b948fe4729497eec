import { type SVGTemplateResult, type TemplateResult, html, nothing, svg } from 'lit';
import { TlElement } from '../parts/tl-element.ts';
import { setStyle } from '../design/set-style.ts';
import { chartStyles } from './chart-styles.ts';
import { chartWords } from '../text/charts.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { type ChartName, saveCsv, savePng, saveSvg } from './save.ts';
import { numbersTable } from './numbers-table.ts';

/** px of a chart on paper: what an A4 page holds between its margins, less a little. */
const PAPER_WIDTH = 680;

/**
 * What every chart of the program shares: it fills its width, a cursor that follows the pointer and the arrow keys and
 * says the value where it stands, the table of its numbers, and saving as SVG, PNG and CSV.
 * A chart draws itself in `picture(width)` and lists its numbers in `table()`.
 */
export abstract class ChartElement extends TlElement {
  static override properties = {
    heading: {},
    summary: {},
    fixed: { type: Number },
    bare: { type: Boolean, reflect: true },
    width: { state: true },
    at: { state: true },
  };
  static override styles = [TlElement.styles, chartStyles];

  /** Name of the chart; also the file name of what is saved. */
  declare heading: string;
  /** One sentence that says what the chart shows, for those who do not see it. */
  declare summary: string;
  /** Draws at this width (px) whatever the room and scales the drawing to it: for a sheet of paper. */
  declare fixed: number | undefined;
  /** The drawing and its name alone, without reading line, files and table. */
  declare bare: boolean;
  /** A chart whose arrow keys turn it and whose page keys go from mark to mark. */
  protected turning = false;
  declare protected width: number;
  /** Index of the stop the cursor is on, or -1. */
  declare protected at: number;
  #watch: ResizeObserver | undefined;
  #onScreen = 0;

  constructor() {
    super();
    this.heading = '';
    this.summary = '';
    this.fixed = undefined;
    this.bare = false;
    this.width = 0;
    this.at = -1;
  }

  abstract picture(width: number): ChartPicture;
  abstract table(): ChartTable;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch = new ResizeObserver(([entry]) => {
      const width = Math.floor(entry!.contentRect.width);
      if (width > 0 && width !== this.width) this.width = width;
    });
    this.#watch.observe(this);
    window.addEventListener('beforeprint', this.#forPaper);
    window.addEventListener('afterprint', this.#forScreen);
    // Drawn with its surroundings, not a frame after them: nothing below it is pushed down.
    if (this.fixed === undefined && this.width === 0) this.width = Math.floor(this.clientWidth);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch?.disconnect();
    window.removeEventListener('beforeprint', this.#forPaper);
    window.removeEventListener('afterprint', this.#forScreen);
  }

  /** Drawn anew for a page, not shrunk to it: what is written in it keeps its size. */
  readonly #forPaper = (): void => {
    if (this.width === 0) return;
    this.#onScreen = this.width;
    this.width = Math.min(this.width, PAPER_WIDTH);
    // The page is laid out for paper before the next update would come.
    this.performUpdate();
  };

  readonly #forScreen = (): void => {
    if (this.#onScreen > 0) this.width = this.#onScreen;
    this.#onScreen = 0;
  };

  /** What the marks are, in one line under the name; empty where the marks are named themselves. */
  protected key(): string {
    return '';
  }

  /** More keys a chart understands (a turntable turns). Answers whether it took the key. */
  protected extraKey(_event: KeyboardEvent): boolean {
    return false;
  }

  /** Drawn under the SVG: a body on a canvas. */
  protected underlay(_picture: ChartPicture): TemplateResult | typeof nothing {
    return nothing;
  }

  /** What is saved of a drawing: with what lies under it, where something does. */
  protected saved(drawn: SVGSVGElement): SVGSVGElement {
    return drawn;
  }

  /** A drag belongs to the chart itself where it answers true. */
  protected dragging(_event: PointerEvent): boolean {
    return false;
  }

  /** Buttons under the plot, for those who can neither drag nor use keys. */
  protected controls(): TemplateResult | typeof nothing {
    return nothing;
  }

  override render(): TemplateResult | typeof nothing {
    const width = this.fixed ?? this.width;
    if (width === 0) return nothing;
    const picture = this.picture(width);
    if (this.bare) return this.#bareFigure(picture);
    const stop = picture.stops[Math.min(this.at, picture.stops.length - 1)];
    return html`<figure>
      <figcaption id="heading">${this.heading}</figcaption>
      ${this.key() ? html`<p class="key">${this.key()}</p>` : nothing}
      <div
        class="plot"
        role="application"
        tabindex="0"
        aria-labelledby="heading"
        aria-describedby="summary"
        aria-roledescription=${chartWords().chart}
        ${setStyle({ 'block-size': `${picture.height}px` })}
        @keydown=${(e: KeyboardEvent) => this.#key(e, picture)}
        @pointermove=${(e: PointerEvent) => this.#point(e, picture)}
        @pointerdown=${(e: PointerEvent) => this.#point(e, picture)}
        @pointerup=${(e: PointerEvent) => this.dragging(e)}
      >
        ${this.underlay(picture)}
        <svg
          aria-hidden="true"
          width=${picture.width}
          height=${picture.height}
          viewBox="0 0 ${picture.width} ${picture.height}"
        >
          ${picture.marks} ${stop ? cursorMark(picture, stop.x, stop.y) : nothing}
        </svg>
      </div>
      ${this.controls()}
      <p id="summary" class="unseen">
        ${this.summary} ${this.turning ? chartWords().turnKeys : chartWords().keys}
      </p>
      <div class="foot">
        <output aria-live="polite"
          >${stop?.says ?? (this.turning ? chartWords().turnIdle : chartWords().idle)}</output
        >
        <span class="save" role="group" aria-label=${chartWords().save}>
          <button type="button" @click=${() => saveSvg(this.saved(this.#svg()), this.#name())}>SVG</button>
          <button type="button" @click=${() => void savePng(this.saved(this.#svg()), this.#name())}>
            PNG
          </button>
          <button type="button" @click=${() => saveCsv(this.table(), this.heading)}>CSV</button>
        </span>
      </div>
      ${numbersTable(this.table(), this.heading)}
    </figure>`;
  }

  #bareFigure(picture: ChartPicture): TemplateResult {
    return html`<figure>
      ${this.heading ? html`<figcaption>${this.heading}</figcaption>` : nothing}
      ${this.heading && this.key() ? html`<p class="key">${this.key()}</p>` : nothing}
      <svg
        class="scaled"
        role="img"
        aria-label=${this.summary || this.heading}
        viewBox="0 0 ${picture.width} ${picture.height}"
      >
        ${picture.marks}
      </svg>
    </figure>`;
  }

  #name(): ChartName {
    return { heading: this.heading, key: this.key() };
  }

  #svg(): SVGSVGElement {
    return this.renderRoot.querySelector('svg')!;
  }

  #key(event: KeyboardEvent, picture: ChartPicture): void {
    const last = picture.stops.length - 1;
    const page = this.turning ? 1 : Math.max(1, Math.round(last / 8));
    const to: Record<string, number> = {
      ArrowRight: Math.min(last, this.at + 1),
      ArrowLeft: Math.max(0, this.at - 1),
      PageDown: Math.min(last, this.at + page),
      PageUp: Math.max(0, this.at - page),
      Home: 0,
      End: last,
      Escape: -1,
    };
    if (this.extraKey(event)) event.preventDefault();
    else if (event.key in to && last >= 0) {
      this.at = to[event.key]!;
      event.preventDefault();
    }
  }

  #point(event: PointerEvent, picture: ChartPicture): void {
    if (this.dragging(event)) return;
    const box = this.#svg().getBoundingClientRect();
    const x = event.clientX - box.left;
    const y = event.clientY - box.top;
    const lineCursor = picture.cursor === 'line';
    let best = -1;
    let least = Infinity;
    picture.stops.forEach((s, i) => {
      const d = lineCursor ? Math.abs(s.x - x) + 0.001 * Math.abs(s.y - y) : Math.hypot(s.x - x, s.y - y);
      if (d < least) [least, best] = [d, i];
    });
    this.at = best;
  }
}

function cursorMark(picture: ChartPicture, x: number, y: number): SVGTemplateResult {
  if (picture.cursor === 'ring') {
    return svg`<g class="cursor" fill="none" stroke="currentColor"><circle cx=${x} cy=${y} r="11" stroke-width="2"></circle></g>`;
  }
  return svg`<line class="cursor" x1=${x} x2=${x} y1=${picture.span[0]} y2=${picture.span[1]}
    stroke="currentColor" stroke-width="1.5" stroke-dasharray="2 3"></line>`;
}
