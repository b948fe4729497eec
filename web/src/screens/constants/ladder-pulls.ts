import { css, html, nothing, svg } from 'lit';
import { type Patch, onThisScreen, patchName } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { constantsWords } from '../../text/constants.ts';
import { num } from '../../text/numbers.ts';
import { partsWords } from '../../text/parts.ts';

/** One rung for the card: what was predicted, what was measured, and a word on the difference. */
export interface Pull {
  readonly name: string;
  readonly predicted: Patch;
  readonly measured?: Patch;
  /** A film that does not hide: what it looks like over the black half. */
  readonly overBlack?: Patch;
  readonly deltaE00?: number;
  readonly verdict?: string;
}

/**
 * A whole ladder on one card: each rung a pull across black and white, predicted over measured with no edge between.
 */
export class TlLadderPulls extends TlElement {
  static override properties = { pulls: { attribute: false }, close: { type: Boolean, reflect: true } };
  declare pulls: readonly Pull[];
  /** Set close together, for a printed sheet. */
  declare close: boolean;

  static override styles = [
    TlElement.styles,
    css`
      ol {
        list-style: none;
        padding: 0;
        max-inline-size: none;
      }
      li {
        display: grid;
        grid-template-columns: 6rem minmax(0, 1fr) minmax(8rem, 13rem);
        gap: 0 var(--s2);
        align-items: center;
      }
      .strip {
        align-self: stretch;
        position: relative;
        min-block-size: clamp(88px, 9vw, 120px);
      }
      svg {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
      }
      .name {
        font-size: var(--t-lead);
        font-weight: 700;
      }
      .says {
        line-height: 1.25;
      }
      .says b {
        font-size: var(--t-lead);
      }
      .says span {
        display: block;
        font-size: var(--t-small);
      }
      @media (max-width: 34rem) {
        li {
          grid-template-columns: 5rem minmax(0, 1fr) 5.4rem;
          gap: 0 8px;
        }
        .name,
        .says b {
          font-size: var(--t-body);
        }
      }
      :host([close]) li {
        grid-template-columns: 4.6rem minmax(0, 1fr) 2rem;
        gap: 0 8px;
      }
      :host([close]) .name,
      :host([close]) .says b {
        font-size: var(--t-small);
      }
      :host([close]) .strip {
        min-block-size: 48px;
      }
      @media print {
        .strip,
        :host([close]) .strip {
          min-block-size: 10mm;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.pulls = [];
    this.close = false;
  }

  override render() {
    return html`<ol>
      ${this.pulls.map((pull) => this.#row(pull))}
    </ol>`;
  }

  #words(pull: Pull) {
    return html`${pull.deltaE00 === undefined ? nothing : constantsWords().difference}
      <span>${pull.verdict ?? patchName(pull.predicted)}</span>`;
  }

  #row(pull: Pull) {
    // What was predicted is drawn whole and the reading over it: where two only touch, the card shines through.
    const t = constantsWords();
    const names = [
      `${t.predicted} ${patchName(pull.predicted)}`,
      ...(pull.measured ? [`${t.measured} ${patchName(pull.measured)}`] : []),
      ...(pull.overBlack ? [`${partsWords().overBlack} ${patchName(pull.overBlack)}`] : []),
    ];
    return html`<li>
      <span class="name">${pull.name}</span>
      <div class="strip">
        <svg
          viewBox="0 0 200 100"
          preserveAspectRatio="none"
          role="img"
          aria-label="${pull.name}: ${names.join('; ')}"
        >
          <rect width="100.3" height="100" fill="#0b0b0b"></rect>
          <rect x="100" width="100" height="100" fill="#ececec"></rect>
          ${strip(pull.predicted, 10, 80)} ${pull.measured ? strip(pull.measured, 50, 40) : nothing}
          ${pull.overBlack ? strip(pull.overBlack, 10, 80, 94.2) : nothing}
        </svg>
      </div>
      <span class="says">
        ${pull.deltaE00 === undefined ? nothing : html`<b>${num(pull.deltaE00, 1)}</b>`}
        ${this.close ? nothing : this.#words(pull)}
      </span>
    </li>`;
  }
}

function strip(patch: Patch, y: number, height: number, width = 188) {
  return svg`<rect x="6" y=${y} width=${width} height=${height} fill=${onThisScreen(patch.lab).css}></rect>`;
}

define('tl-ladder-pulls', TlLadderPulls);
