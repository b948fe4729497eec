import { css, html, nothing } from 'lit';
import type { FieldOption } from './field.ts';
import { TlElement, define } from './tl-element.ts';

let serial = 0;

/**
 * A choice among a few, all in view. Arrow keys move, as in any radio group.
 *
 *   <tl-choice label="Surround" .options=${[...]} value="middle" @tl-choose=${(e) => e.detail}></tl-choice>
 */
export class TlChoice extends TlElement {
  static override properties = {
    label: { type: String },
    value: { type: String },
    options: { attribute: false },
    quiet: { type: Boolean, reflect: true },
  };
  declare label: string;
  declare value: string;
  declare options: readonly FieldOption[];
  /** Label for screen readers only. */
  declare quiet: boolean;
  readonly #name = `choice-${++serial}`;

  static override styles = [
    TlElement.styles,
    css`
      @media print {
        :host {
          display: none;
        }
      }
      fieldset {
        margin: 0;
        padding: 0;
        border: 0;
        min-inline-size: 0;
      }
      legend {
        padding: 0;
        margin-block-end: 4px;
        font-weight: 650;
      }
      .set {
        display: flex;
        flex-wrap: wrap;
      }
      label {
        position: relative;
        display: grid;
        align-items: center;
        min-block-size: var(--target);
        padding: 6px 14px;
        border: var(--edge);
        margin-inline-end: -2px;
        margin-block-end: -2px;
        cursor: pointer;
      }
      label:hover {
        background: var(--sunk);
      }
      input {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
        margin: 0;
        opacity: 0;
        cursor: pointer;
      }
      label:has(:checked) {
        background: var(--ink);
        color: var(--on-ink);
        font-weight: 650;
      }
      label:has(:focus-visible) {
        outline: 3px solid var(--ink);
        outline-offset: 3px;
        z-index: 1;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.value = '';
    this.options = [];
    this.quiet = false;
  }

  override render() {
    return html`<fieldset>
      <legend class=${this.quiet ? 'unseen' : nothing}>${this.label}</legend>
      <div class="set">
        ${this.options.map(
          (o) =>
            html`<label
              ><input
                type="radio"
                name=${this.#name}
                value=${o.value}
                .checked=${o.value === this.value}
                @change=${() => this.#chose(o.value)}
              />${o.label}</label
            >`,
        )}
      </div>
    </fieldset>`;
  }

  #chose(value: string): void {
    this.value = value;
    this.dispatchEvent(
      new CustomEvent<string>('tl-choose', { detail: value, bubbles: true, composed: true }),
    );
  }
}
define('tl-choice', TlChoice);
