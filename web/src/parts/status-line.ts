import { css, html } from 'lit';
import { TlElement, define } from './tl-element.ts';

let line = '';
const shown = new Set<TlStatus>();

/** Says what just happened. It stands until something else happens; nothing flies in or away. */
export function say(text: string): void {
  line = text;
  for (const status of shown) status.requestUpdate();
}

/** The status line: one sentence, read out politely. The frame has one; a screen needs none of its own. */
export class TlStatus extends TlElement {
  static override styles = [
    TlElement.styles,
    css`
      div:not(:empty) {
        background: var(--ground);
        border-block-start: var(--edge);
        padding: 8px clamp(16px, 4vw, 56px);
        font-weight: 600;
        text-wrap: pretty;
      }
    `,
  ];

  /** On a phone the line lies between the next step and the bar: the next step makes room for it. */
  readonly #height = new ResizeObserver(() => {
    document.documentElement.style.setProperty('--said', `${this.offsetHeight}px`);
  });

  override connectedCallback(): void {
    super.connectedCallback();
    shown.add(this);
    this.#height.observe(this);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    shown.delete(this);
    this.#height.disconnect();
  }
  override render() {
    return html`<div role="status" aria-live="polite">${line}</div>`;
  }
}
define('tl-status', TlStatus);
