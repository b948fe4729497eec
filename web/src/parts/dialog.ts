import { css, html } from 'lit';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * A slip of paper over the bench: the browser's own modal dialog (focus kept inside, Escape closes).
 *
 *   <tl-dialog heading="A new tube" ?open=${this.adding} @tl-close=${() => (this.adding = false)}>...</tl-dialog>
 */
export class TlDialog extends TlElement {
  static override properties = { heading: { type: String }, open: { type: Boolean, reflect: true } };
  declare heading: string;
  declare open: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: contents;
      }
      dialog {
        inline-size: min(42rem, calc(100vw - 24px));
        max-block-size: calc(100dvh - 24px);
        padding: 0;
        border: 3px solid var(--ink);
        border-radius: 0;
        background: var(--ground);
        color: var(--ink);
        overflow: auto;
        /* Head and next step keep their places: what has the focus is scrolled to between them. */
        scroll-padding-block: 88px 112px;
      }
      dialog::backdrop {
        background: #000;
        opacity: 0.55;
      }
      .head {
        display: flex;
        justify-content: space-between;
        align-items: center;
        gap: var(--s2);
        padding: var(--s2) var(--s3);
        border-block-end: var(--edge);
        position: sticky;
        inset-block-start: 0;
        background: var(--ground);
        z-index: 1;
      }
      .body {
        padding: var(--s3);
        display: grid;
        gap: var(--s3);
      }
      @media (max-width: 34rem) {
        .body,
        .head {
          padding: var(--s2);
        }
      }
    `,
  ];

  constructor() {
    super();
    this.heading = '';
    this.open = false;
  }

  override updated(): void {
    const dialog = this.renderRoot.querySelector('dialog');
    if (!dialog) return;
    if (this.open && !dialog.open) dialog.showModal();
    if (!this.open && dialog.open) dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="h" @close=${this.#closed}>
      ${
        this.open
          ? html`<div class="head">
                <h2 id="h">${this.heading}</h2>
                <button type="button" @click=${this.close}>${partsWords().close}</button>
              </div>
              <div class="body"><slot></slot></div>`
          : ''
      }
    </dialog>`;
  }

  close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  #closed(): void {
    if (!this.open) return;
    this.open = false;
    this.dispatchEvent(new CustomEvent('tl-close', { bubbles: true, composed: true }));
  }
}
define('tl-dialog', TlDialog);
