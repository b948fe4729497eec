import { css, html, nothing } from 'lit';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * The one next step of a screen: the only chalk on the page. It is a button, or a link where `href` is set.
 *
 *   <tl-next label="Read the 1:4 rung" hint="Space, any key, or the head's button" @click=${...}></tl-next>
 *
 * While `busy`, it says so and takes no press. `disabled` needs a `hint` that says what is missing.
 */
export class TlNext extends TlElement {
  static override properties = {
    label: { type: String },
    hint: { type: String },
    href: { type: String },
    busy: { type: Boolean, reflect: true },
    disabled: { type: Boolean, reflect: true },
    far: { type: Boolean, reflect: true },
  };
  declare label: string;
  declare hint: string;
  declare href: string;
  declare busy: boolean;
  declare disabled: boolean;
  /** Letters to be read from two metres. */
  declare far: boolean;

  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };
  static override styles = [
    TlElement.styles,
    css`
      a,
      button {
        display: grid;
        gap: 2px;
        align-content: center;
        inline-size: 100%;
        min-block-size: 72px;
        padding: 14px 20px;
        background: var(--chalk);
        color: var(--on-chalk);
        border: 3px solid #000;
        text-decoration: none;
        text-align: start;
        font-weight: 700;
        font-size: var(--t-lead);
        line-height: 1.2;
      }
      a:hover,
      button:hover:not(:disabled, [aria-disabled='true']) {
        background: var(--chalk);
        box-shadow: inset 0 -6px 0 #000;
      }
      a:active,
      button:active:not(:disabled, [aria-disabled='true']) {
        background: #000;
        color: #fff;
      }
      button:disabled,
      button[aria-disabled='true'] {
        background: var(--raised);
        color: var(--ink);
        border: 3px dashed var(--ink);
        font-weight: 700;
        cursor: default;
      }
      span {
        text-wrap: pretty;
      }
      :host([far]) a,
      :host([far]) button {
        min-block-size: clamp(96px, 16vh, 160px);
        font-size: clamp(1.75rem, 3.6vw, 3.25rem);
        padding-inline: var(--s3);
      }
      @media (max-width: 56rem) {
        :host([far]) a,
        :host([far]) button {
          min-block-size: 92px;
          font-size: 1.75rem;
          padding-inline: 20px;
        }
      }
      .hint {
        font-size: var(--t-body);
        font-weight: 450;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.hint = '';
    this.href = '';
    this.busy = false;
    this.disabled = false;
    this.far = false;
  }

  /** Puts the focus on it once it is drawn: an element that came a moment ago has nothing yet to take it. */
  async take(): Promise<void> {
    await this.updateComplete;
    this.focus();
  }

  override render() {
    const inside = html`<span>${this.label}</span>
      ${this.busy ? html`<span class="hint">${partsWords().working} …</span>` : nothing}
      ${!this.busy && this.hint ? html`<span class="hint">${this.hint}</span>` : nothing}`;
    if (this.href && !this.disabled) return html`<a href=${this.href}>${inside}</a>`;
    // Not `disabled` while busy: the focus would be lost, and with it the place of the hand on the keyboard.
    return html`<button
      type="button"
      ?disabled=${this.disabled}
      aria-disabled=${this.busy ? 'true' : nothing}
      aria-busy=${this.busy}
      @click=${this.#press}
    >
      ${inside}
    </button>`;
  }

  #press(event: Event): void {
    if (this.busy) event.stopPropagation();
  }
}
define('tl-next', TlNext);
