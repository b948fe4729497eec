import { css, html, svg } from 'lit';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';

/**
 * An amount as a film pulled across a card: drag it, or use the arrow keys. Its travel is cubic, so that a drop of a
 * strong tube can be set as finely as a spoonful of white. Sends `tl-pull` with the amount.
 */
export class TlPullSlider extends TlElement {
  static override properties = {
    label: {},
    amount: { type: Number },
    most: { type: Number },
    says: {},
    patch: { attribute: false },
  };
  declare label: string;
  declare amount: number;
  /** The amount at the end of the card. */
  declare most: number;
  /** The amount in words, for a screen reader. */
  declare says: string;
  declare patch: Patch | undefined;

  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };
  static override styles = [
    TlElement.styles,
    css`
      div {
        position: relative;
        block-size: var(--target);
      }
      @media print {
        :host {
          display: none;
        }
      }
      svg {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
      }
      input {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
        margin: 0;
        opacity: 0;
        cursor: ew-resize;
        touch-action: pan-y;
      }
      div:has(:focus-visible) {
        outline: 3px solid var(--ink);
        outline-offset: 3px;
      }
      :host(:dir(rtl)) svg {
        transform: scaleX(-1);
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.amount = 0;
    this.most = 100;
    this.says = '';
    this.patch = undefined;
  }

  override render() {
    const place = Math.cbrt(Math.min(1, this.amount / this.most));
    const fill = this.patch ? onThisScreen(this.patch.lab).css : '#777777';
    return html`<div>
      <svg viewBox="0 0 200 48" preserveAspectRatio="none" aria-hidden="true">
        <rect width="100.4" height="48" fill="#0b0b0b"></rect>
        <rect x="100" width="100" height="48" fill="#ececec"></rect>
        ${svg`<rect x="4" y="9" width=${192 * place} height="30" fill=${fill}></rect>
          <rect x=${4 + 192 * place - 1.5} y="3" width="3" height="42" fill="#777777"></rect>`}
      </svg>
      <input
        type="range"
        min="0"
        max="1000"
        step="1"
        aria-label=${this.label}
        aria-valuetext=${this.says}
        .value=${String(Math.round(1000 * place))}
        @input=${this.#moved}
      />
    </div>`;
  }

  readonly #moved = (event: Event): void => {
    const place = Number((event.target as HTMLInputElement).value) / 1000;
    this.amount = this.most * place ** 3;
    this.dispatchEvent(
      new CustomEvent<number>('tl-pull', { detail: this.amount, bubbles: true, composed: true }),
    );
  };
}
define('tl-pull-slider', TlPullSlider);
