import { css, html, nothing } from 'lit';
import { type VocabularyWord, vocabularyWords } from '../text/vocabulary.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * A word of the trade, explained where it stands: a dotted line, and a sentence that opens on the spot.
 *
 *   put the head on the <tl-term word="rung"></tl-term>
 */
export class TlTerm extends TlElement {
  static override properties = { word: { type: String }, open: { state: true } };
  declare word: VocabularyWord;
  declare open: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: inline;
      }
      button {
        display: inline;
        min-block-size: 0;
        padding: 0;
        border: 0;
        border-block-end: 2px dotted var(--ink);
        font-weight: inherit;
      }
      span {
        background: var(--raised);
        padding: 2px 8px;
        margin-inline-start: 4px;
        font-size: var(--t-small);
        font-weight: 400;
        letter-spacing: 0;
      }
    `,
  ];

  constructor() {
    super();
    this.word = 'rung';
    this.open = false;
  }

  override render() {
    const { name, means } = vocabularyWords()[this.word];
    return html`<button
        type="button"
        aria-expanded=${this.open}
        aria-label=${partsWords().explain(name)}
        @click=${() => (this.open = !this.open)}
      >
        ${name}</button
      >${this.open ? html`<span role="note">${means}</span>` : nothing}`;
  }
}
define('tl-term', TlTerm);
