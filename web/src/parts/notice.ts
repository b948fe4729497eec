import { css, html, nothing } from 'lit';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * A sentence that must be seen, told apart by form and not by hue: a note has a line, a warning an open hatched
 * edge, a caution a broad hatched edge, an error is a block of ink.
 *
 *   <tl-notice kind="caution" heading="PR108">Gloves; no sanding; do not eat while you paint.</tl-notice>
 */
export class TlNotice extends TlElement {
  static override properties = {
    kind: { type: String, reflect: true },
    heading: { type: String },
    live: { type: Boolean },
  };
  declare kind: 'note' | 'warning' | 'caution' | 'error';
  declare heading: string;
  /** Read out as soon as it appears. */
  declare live: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        border: var(--rule);
        border-inline-start: 0;
        padding: 12px 16px 12px 0;
        padding-inline: 28px 16px;
        position: relative;
        max-inline-size: calc(var(--measure) + 44px);
      }
      :host::before {
        content: '';
        position: absolute;
        inset-block: -1px;
        inset-inline-start: 0;
        inline-size: 4px;
        background: var(--ink);
      }
      :host([kind='warning'])::before,
      :host([kind='caution'])::before {
        inline-size: 12px;
        background: repeating-linear-gradient(-45deg, var(--ink) 0 5px, var(--ground) 5px 10px);
        border: 1px solid var(--ink);
      }
      :host([kind='caution']) {
        border-block-width: 2px;
      }
      :host([kind='caution'])::before {
        inline-size: 16px;
        background: repeating-linear-gradient(-45deg, #000 0 8px, #fff 8px 16px);
      }
      :host([kind='error']) {
        background: var(--ink);
        color: var(--on-ink);
        padding-inline-start: 16px;
      }
      strong {
        display: block;
      }
      ::slotted(p + p) {
        margin-block-start: 8px;
      }
      ::slotted(ul) {
        padding-inline-start: 1.2em;
      }
    `,
  ];

  constructor() {
    super();
    this.kind = 'note';
    this.heading = '';
    this.live = false;
  }

  override render() {
    const t = partsWords();
    const heading = this.heading || (this.kind === 'note' ? '' : t[this.kind]);
    return html`<div role=${this.live ? (this.kind === 'error' ? 'alert' : 'status') : 'note'}>
      ${heading ? html`<strong>${heading}</strong>` : nothing}
      <slot></slot>
    </div>`;
  }
}
define('tl-notice', TlNotice);
