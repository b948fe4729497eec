import { type SVGTemplateResult, type TemplateResult, html, nothing, svg } from 'lit';
import { createRef, ref } from 'lit/directives/ref.js';
import { setStyle } from '../design/set-style.ts';
import { define } from '../parts/tl-element.ts';
import { chartWords } from '../text/charts.ts';
import { num } from '../text/numbers.ts';
import { ChartElement } from './chart-element.ts';
import type { ChartPicture, ChartTable } from './model.ts';
import { type MarkedPlace, placeLabels } from './place-labels.ts';
import { type Turn, turned } from './orthographic.ts';
import { INK, PAPER } from './save.ts';
import { type Place, type Placing, type SolidBody, paintBody, placing } from './solid-body.ts';

/** A named mark: a tube, a mix, a wanted colour. CIELAB. */
export interface TurntableMark {
  readonly label: string;
  readonly paint: string;
  readonly L: number;
  readonly a: number;
  readonly b: number;
  /** Drawn as an open ring with its colour inside: a wanted colour. */
  readonly wanted?: boolean;
}

const STEP = 10;
const AXIS = Array.from({ length: 21 }, (_, i) => 5 * i);
const RING = Array.from({ length: 49 }, (_, i) => (i / 48) * 2 * Math.PI);

/** Reachable colour in CIELAB on a turntable: drag or arrow keys turn it. */
export class Turntable extends ChartElement {
  static override properties = {
    ...ChartElement.properties,
    marks: { attribute: false },
    body: { attribute: false },
    turn: { state: true },
  };
  declare marks: readonly TurntableMark[];
  declare body: SolidBody | undefined;
  declare turn: Turn;
  readonly #canvas = createRef<HTMLCanvasElement>();
  #drag: { x: number; y: number } | undefined;

  constructor() {
    super();
    this.marks = [];
    this.body = undefined;
    this.turn = { around: 20, above: 24 };
    this.turning = true;
  }

  override picture(width: number): ChartPicture {
    const height = Math.min(560, Math.max(320, width * 0.78));
    const scale = this.#scale(width, height);
    const at = placing(width, height, scale, this.turn);
    const placed = this.marks.map((mark) => ({ mark, ...at(mark) }));
    const order = [...placed].sort((p, q) => p.depth - q.depth);
    const marks = svg`
      ${this.#written(at)}
      ${order.map(({ mark, x, y }) => markShape(mark, x, y))}
      ${width >= 480 ? names(placed, width, height, this.#texts(at)) : nothing}`;
    const stops = placed.map(({ mark, x, y }) => ({ x, y, says: says(mark) }));
    return { width, height, marks, stops, cursor: 'ring', span: [0, height] };
  }

  #scale(width: number, height: number): number {
    let most = 60;
    for (const m of this.marks) most = Math.max(most, Math.hypot(m.a, m.b));
    return Math.min(width / (2.3 * most), height / 118);
  }

  /** Neutral axis with values, and rings of equal chroma at mid grey: the only furniture. */
  #lines(at: Placing): Place[][] {
    const rings = [20, 40, 60].map((c) =>
      RING.map((h) => at({ L: 50, a: c * Math.cos(h), b: c * Math.sin(h) })),
    );
    return [...rings, AXIS.map((L) => at({ L, a: 0, b: 0 }))];
  }

  #written(at: Placing): SVGTemplateResult {
    return svg`<g font-size="12" fill="currentColor" text-anchor="middle"
        paint-order="stroke" stroke="var(--ground)" stroke-width="3" stroke-linejoin="round">
        ${this.#texts(at).map((p) => svg`<text x=${p.x} y=${p.y} dy="0.35em">${p.text}</text>`)}
      </g>`;
  }

  /** What is written on the furniture, by the middle of each text. */
  #texts(at: Placing): MarkedPlace[] {
    const axis = [0, 50, 100].map((L) => {
      const { x, y } = at({ L, a: 0, b: 0 });
      return { text: `L* ${L}`, x: x - 26, y };
    });
    return [
      ...axis,
      { text: '+a*', ...at({ L: 50, a: 66, b: 0 }) },
      { text: '−a*', ...at({ L: 50, a: -66, b: 0 }) },
      { text: '+b*', ...at({ L: 50, a: 0, b: 66 }) },
      { text: '−b*', ...at({ L: 50, a: 0, b: -66 }) },
    ];
  }

  protected override underlay(picture: ChartPicture): TemplateResult {
    return html`<canvas
      ${ref(this.#canvas)}
      aria-hidden="true"
      width=${picture.width * devicePixelRatio}
      height=${picture.height * devicePixelRatio}
      ${setStyle({ 'inline-size': `${picture.width}px`, 'block-size': `${picture.height}px` })}
    ></canvas>`;
  }

  protected override controls(): TemplateResult {
    const t = chartWords();
    const button = (text: string, act: () => void): TemplateResult =>
      html`<button type="button" @click=${act}>${text}</button>`;
    return html`<div class="row no-print">
      ${button(t.turnLeft, () => this.#by(-30, 0))} ${button(t.turnRight, () => this.#by(30, 0))}
      ${button(t.fromSide, () => (this.turn = { ...this.turn, above: 0 }))}
      ${button(t.fromAbove, () => (this.turn = { around: 0, above: 90 }))}
    </div>`;
  }

  protected override updated(): void {
    this.#paint();
  }

  #paint(): void {
    const canvas = this.#canvas.value;
    if (!canvas) return;
    const ratio = devicePixelRatio;
    this.#paintOn(canvas, canvas.width / ratio, canvas.height / ratio, ratio, getComputedStyle(this).color);
  }

  #paintOn(canvas: HTMLCanvasElement, width: number, height: number, ratio: number, ink: string): void {
    const pen = canvas.getContext('2d');
    if (!pen) return;
    pen.setTransform(ratio, 0, 0, ratio, 0, 0);
    pen.clearRect(0, 0, width, height);
    const at = placing(width, height, this.#scale(width, height), this.turn);
    paintBody(pen, this.body, this.#lines(at), at, ink);
  }

  /** The drawing with the body in it, for paper. */
  protected override saved(drawn: SVGSVGElement): SVGSVGElement {
    const copy = drawn.cloneNode(true) as SVGSVGElement;
    const { width, height } = drawn.viewBox.baseVal;
    const canvas = document.createElement('canvas');
    canvas.width = 2 * width;
    canvas.height = 2 * height;
    this.#paintOn(canvas, width, height, 2, INK);
    const image = document.createElementNS('http://www.w3.org/2000/svg', 'image');
    image.setAttribute('href', canvas.toDataURL());
    image.setAttribute('width', String(width));
    image.setAttribute('height', String(height));
    copy.prepend(image);
    copy.querySelectorAll('[stroke="var(--ground)"]').forEach((text) => text.setAttribute('stroke', PAPER));
    return copy;
  }

  #by(around: number, above: number): void {
    this.turn = turned(this.turn, around, above);
  }

  protected override extraKey(event: KeyboardEvent): boolean {
    const by: Record<string, [number, number]> = {
      ArrowLeft: [-STEP, 0],
      ArrowRight: [STEP, 0],
      ArrowUp: [0, STEP],
      ArrowDown: [0, -STEP],
    };
    const turn = by[event.key];
    if (turn) this.#by(...turn);
    return turn !== undefined;
  }

  protected override dragging(event: PointerEvent): boolean {
    if (event.type === 'pointerdown') {
      this.#drag = { x: event.clientX, y: event.clientY };
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    } else if (event.type === 'pointermove' && this.#drag && event.buttons > 0) {
      this.#by((event.clientX - this.#drag.x) / 2, (event.clientY - this.#drag.y) / 2);
      this.#drag = { x: event.clientX, y: event.clientY };
      return true;
    } else this.#drag = undefined;
    return false;
  }

  override table(): ChartTable {
    const t = chartWords();
    return {
      head: [t.name, 'L*', 'a*', 'b*', t.chroma],
      rows: this.marks.map((m) => [m.label, m.L, m.a, m.b, Math.hypot(m.a, m.b)]),
    };
  }
}

/** Names in the order of the marks, so that they keep their sides while the table turns. */
function names(
  placed: readonly { readonly mark: TurntableMark; readonly x: number; readonly y: number }[],
  width: number,
  height: number,
  standing: readonly MarkedPlace[],
): SVGTemplateResult[] {
  const labels = placeLabels(
    placed.map(({ mark, x, y }) => ({ text: mark.label, x, y })),
    width,
    height,
    standing,
  );
  return labels.map(
    ({ text, x, y, at, anchor, led }) => svg`
      ${led ? svg`<line x1=${x} y1=${y} x2=${at.x} y2=${at.y} stroke="currentColor" stroke-width="1"></line>` : nothing}
      <text
        x=${at.x} y=${at.y} dy="0.35em" font-size="13" text-anchor=${anchor} fill="currentColor"
        paint-order="stroke" stroke="var(--ground)" stroke-width="4" stroke-linejoin="round"
      >${text}</text>`,
  );
}

function markShape(mark: TurntableMark, x: number, y: number): SVGTemplateResult {
  return svg`<circle data-name=${mark.label} cx=${x} cy=${y} r="8" fill=${mark.paint} stroke="currentColor" stroke-width="2"></circle>
    ${mark.wanted ? svg`<circle cx=${x} cy=${y} r="13" fill="none" stroke="currentColor" stroke-width="2"></circle>` : nothing}`;
}

function says(m: TurntableMark): string {
  const t = chartWords();
  return `${m.label}: L* ${num(m.L, 1)}, a* ${num(m.a, 1)}, b* ${num(m.b, 1)}, ${t.chroma} ${num(Math.hypot(m.a, m.b), 1)}`;
}

define('tl-turntable', Turntable);
