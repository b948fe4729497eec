import { css, html, nothing, svg } from 'lit';
import type { LiveReading } from '../../../../server/api/instrument.ts';
import { listen } from '../../api/events.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { benchWords } from '../../text/bench.ts';
import { num } from '../../text/numbers.ts';

const WIDE = 640;
const HIGH = 220;

/**
 * What the head counted last, a bar for each channel. Once the bars stand, a new reading only changes their numbers in
 * the next frame; the template is not run again.
 */
export class TlLiveCounts extends TlElement {
  static override properties = { count: { state: true } };
  /** How many channels are drawn; 0 until something was read. */
  declare count: number;

  static override styles = [
    TlElement.styles,
    css`
      svg {
        display: block;
        inline-size: 100%;
        block-size: auto;
        overflow: visible;
      }
      text {
        font-size: 15px;
        fill: var(--ink);
      }
      line {
        stroke: var(--ink);
      }
      rect {
        fill: var(--ink);
      }
      p {
        min-block-size: 3em;
      }
    `,
  ];
  #latest: LiveReading | undefined;
  #frame = 0;
  #stop: (() => void) | undefined;

  constructor() {
    super();
    this.count = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = listen('reading', ({ reading }) => this.draw(reading));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
    cancelAnimationFrame(this.#frame);
  }

  /** Draws a reading in the next frame. */
  draw(reading: LiveReading): void {
    this.#latest = reading;
    if (reading.channels.length !== this.count) this.count = reading.channels.length;
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => this.#paint());
  }

  override updated(): void {
    this.#paint();
  }

  #paint(): void {
    const reading = this.#latest;
    if (!reading) return;
    const shown = reading.reflectance ?? reading.counts;
    const top = reading.reflectance ? 1 : Math.max(1e-9, ...shown);
    this.renderRoot.querySelectorAll<SVGRectElement>('rect').forEach((bar, i) => {
      const high = Math.max(0, Math.min(1.02, (shown[i] ?? 0) / top)) * HIGH;
      bar.setAttribute('height', high.toFixed(1));
      bar.setAttribute('y', (HIGH - high).toFixed(1));
    });
    const label = this.renderRoot.querySelector('.top');
    if (label) label.textContent = `${num(top, reading.reflectance ? 1 : 3)} ${this.#unit(reading)}`;
  }

  #unit(reading: LiveReading): string {
    return reading.reflectance ? benchWords().reflectance : benchWords().counts;
  }

  override render() {
    const t = benchWords();
    const reading = this.#latest;
    if (!reading || this.count === 0) return html`<p>${t.liveEmpty}</p>`;
    const wide = WIDE / this.count;
    const few = Math.ceil(this.count / 6);
    return html`<svg viewBox="-4 -26 ${WIDE + 8} ${HIGH + 54}" role="img" aria-label=${t.liveName}>
      <text class="top" x="0" y="-8"></text>
      <line x1="0" x2=${WIDE} y1="0" y2="0" stroke-dasharray="2 6"></line>
      ${reading.channels.map((channel, i) => {
        const name = channel.centre === null ? channel.name : num(channel.centre, 0);
        return svg`<rect x=${i * wide + wide * 0.12} width=${wide * 0.76} y=${HIGH} height="0"></rect>
          ${
            i % few === 0
              ? svg`<text x=${(i + 0.5) * wide} y=${HIGH + 20} text-anchor="middle">${name}</text>`
              : nothing
          }`;
      })}
      <line x1="0" x2=${WIDE} y1=${HIGH} y2=${HIGH} stroke-width="2"></line>
    </svg>`;
  }
}
define('tl-live-counts', TlLiveCounts);
