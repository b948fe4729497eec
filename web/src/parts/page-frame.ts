import { css, html, nothing } from 'lit';
import { type VocabularyWord, vocabularyWords } from '../text/vocabulary.ts';
import { when } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * The sheet a screen is laid out on: its name, one sentence, the next step in its place, the work, the words explained.
 *
 *   <tl-page heading="Rack" lead="..." .terms=${['tube', 'pigment']}>
 *     <tl-next slot="next" ...></tl-next>
 *     ...the work...
 *   </tl-page>
 */
export class TlPage extends TlElement {
  static override properties = {
    heading: { type: String },
    lead: { type: String },
    terms: { attribute: false },
    cautions: { attribute: false },
    sheet: { type: Boolean, reflect: true },
    waiting: { type: Boolean },
  };
  declare heading: string;
  declare lead: string;
  declare terms: readonly VocabularyWord[];
  /** Sentences of care that apply here; the deferral to the safety data sheet is added. */
  declare cautions: readonly string[];
  /** What prints is a sheet with a heading of its own. */
  declare sheet: boolean;
  /** Most of the work is still to come: what stands under it waits, so that it is not pushed down. */
  declare waiting: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s4);
        padding: var(--s4) clamp(16px, 4vw, 56px) var(--s5);
      }
      header {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(18rem, 26rem);
        gap: var(--s3) var(--s4);
        /* The name stands at the same height on every screen, however much the next step says. */
        align-items: start;
      }
      /* The next step and the sentence may come a moment after the name: their places are kept, with two lines each. */
      .next {
        min-block-size: 104px;
      }
      .lead {
        margin-block-start: 6px;
        min-block-size: 1.4em;
        text-wrap: pretty;
      }
      .work {
        display: grid;
        gap: var(--s4);
        align-content: start;
        min-inline-size: 0;
      }
      ::slotted(*) {
        min-inline-size: 0;
      }
      @media (max-width: 56rem) {
        :host {
          padding-block: var(--s3) calc(var(--s5) + 96px + var(--said, 0px));
          gap: var(--s3);
        }
        header {
          grid-template-columns: minmax(0, 1fr);
        }
        .next {
          min-block-size: 0;
          position: fixed;
          inset-inline: 0;
          inset-block-end: calc(64px + var(--said, 0px) + env(safe-area-inset-bottom));
          z-index: 4;
        }
      }
      .foot {
        display: grid;
        border-block-start: var(--edge);
      }
      details + details {
        border-block-start: var(--rule);
      }
      details[open] {
        padding-block-end: var(--s2);
      }
      summary {
        min-block-size: 56px;
      }
      dl {
        display: grid;
        gap: 10px;
      }
      dt {
        font-weight: 700;
      }
      dd {
        margin: 0;
      }
      ul {
        padding-inline-start: 1.2em;
      }
      .printed {
        display: none;
      }
      @media print {
        :host {
          display: block;
          padding: 0;
        }
        header {
          display: block;
          position: relative;
          margin-block-end: 3mm;
        }
        h1 {
          padding-inline-end: 45mm;
        }
        .lead {
          min-block-size: 0;
          margin-block-start: 1mm;
          max-inline-size: none;
        }
        .printed {
          display: block;
          position: absolute;
          inset-block-start: 1mm;
          inset-inline-end: 0;
          font-size: var(--t-small);
        }
        .foot,
        .next,
        :host([sheet]) header {
          display: none;
        }
        /* Grids break badly across sheets of paper. */
        .work {
          display: block;
        }
        ::slotted(*) {
          margin-block-end: 4mm;
        }
      }
      @media (max-height: 30rem) {
        .next {
          position: static;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.heading = '';
    this.lead = '';
    this.terms = [];
    this.cautions = [];
    this.sheet = false;
    this.waiting = false;
  }

  override render() {
    return html`<header>
        <div>
          <h1 tabindex="-1">${this.heading}</h1>
          <p class="lead">${this.lead}</p>
        </div>
        <p class="printed">${partsWords().printed(when(new Date().toISOString(), false))}</p>
        <div class="next no-print"><slot name="next"></slot></div>
      </header>
      <div class="work"><slot></slot></div>
      ${this.#foot()}`;
  }

  /** Care and words, folded, where they are looked for and in nobody's way. */
  #foot() {
    const t = partsWords();
    const vocabulary = vocabularyWords();
    if (this.waiting || this.cautions.length + this.terms.length === 0) return nothing;
    return html`<div class="foot no-print">
      ${
        this.cautions.length > 0
          ? html`<details>
              <summary>${t.cautionsHere}</summary>
              <ul>
                ${this.cautions.map((c) => html`<li>${c}</li>`)}
                <li>${t.defer}</li>
              </ul>
            </details>`
          : nothing
      }
      ${
        this.terms.length > 0
          ? html`<details>
              <summary>${t.wordsHere}</summary>
              <dl>
                ${this.terms.map(
                  (word) =>
                    html`<div>
                      <dt>${vocabulary[word].name}</dt>
                      <dd>${vocabulary[word].means}</dd>
                    </div>`,
                )}
              </dl>
            </details>`
          : nothing
      }
    </div>`;
  }
}
define('tl-page', TlPage);
