import { css, html, nothing } from 'lit';
import { TlElement, define } from './tl-element.ts';

/** One number with its name, and a word on what it means. */
export interface Figure {
  readonly name: string;
  readonly figure: string;
  readonly means?: string;
}

/**
 * A few numbers that belong together, large enough to be read at a glance, each with its name and a word.
 *
 *   <tl-figures .figures=${[{ name: 'Value', figure: '3.2', means: 'good to about 0.1' }]}></tl-figures>
 */
export class TlFigures extends TlElement {
  static override properties = { figures: { attribute: false } };
  declare figures: readonly Figure[];

  static override styles = [
    TlElement.styles,
    css`
      :host {
        container-type: inline-size;
      }
      dl {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 12rem), 1fr));
        gap: var(--s3);
        max-inline-size: none;
      }
      /* No figure is left alone on a line: four go two and two, five three and two, eight four and four. */
      @container (max-width: 52rem) {
        dl:has(> :nth-child(4):last-child) {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
      }
      @container (min-width: 36rem) and (max-width: 66rem) {
        dl:has(> :nth-child(5):last-child) {
          grid-template-columns: repeat(3, minmax(0, 1fr));
        }
      }
      @container (min-width: 52rem) {
        dl:has(> :nth-child(8):last-child) {
          grid-template-columns: repeat(4, minmax(0, 1fr));
        }
      }
      @container (max-width: 30rem) {
        dl {
          grid-template-columns: repeat(auto-fill, minmax(min(100%, 9rem), 1fr));
          gap: var(--s2);
        }
      }
      div {
        border-block-start: var(--edge);
        padding-block-start: 6px;
        display: grid;
        align-content: start;
      }
      dt {
        font-weight: 450;
      }
      dd {
        margin: 0;
      }
      .figure {
        font-size: 1.75rem;
        font-weight: 700;
        line-height: 1.2;
        letter-spacing: -0.01em;
      }
      .means {
        line-height: 1.3;
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.figures = [];
  }

  override render() {
    return html`<dl>
      ${this.figures.map(
        (f) =>
          html`<div>
            <dt>${f.name}</dt>
            <dd class="figure">${f.figure}</dd>
            ${f.means ? html`<dd class="means">${f.means}</dd>` : nothing}
          </div>`,
      )}
    </dl>`;
  }
}
define('tl-figures', TlFigures);
