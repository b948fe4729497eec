import { css, html, nothing, svg } from 'lit';
import { gamutMark } from '../design/gamut-mark.ts';
import { onThisScreen, patchName, type Patch } from '../design/patch.ts';
import { num } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * A patch, drawn as a drawdown over a card that is half black, half white.
 *
 *   <tl-drawdown .patch=${patchOfReflectance(R)} heading="1:4"></tl-drawdown>
 *   <tl-drawdown .patch=${overWhite} .overBlack=${overBlack}></tl-drawdown>   a film that does not hide
 *   <tl-drawdown></tl-drawdown>                                              a bare card
 *
 * `pulled` (0..1) draws the film part of the way; `interval` is a CIEDE2000 radius; `size` is s, m, l or fill;
 * `plain` leaves the words out (they remain its accessible name).
 */
export class TlDrawdown extends TlElement {
  static override properties = {
    patch: { attribute: false },
    overBlack: { attribute: false },
    ground: { attribute: false },
    heading: { type: String },
    interval: { type: Number },
    pulled: { type: Number },
    size: { type: String, reflect: true },
    plain: { type: Boolean, reflect: true },
  };
  declare patch: Patch | undefined;
  declare overBlack: Patch | undefined;
  /** What lies under the film where it is no card: a toned ground, dried paint. */
  declare ground: Patch | undefined;
  declare heading: string;
  declare interval: number | undefined;
  declare pulled: number;
  declare size: 's' | 'm' | 'l' | 'fill';
  declare plain: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        inline-size: 15rem;
        max-inline-size: 100%;
      }
      :host([size='s']) {
        inline-size: 6rem;
      }
      :host([size='l']) {
        inline-size: 26rem;
      }
      :host([size='fill']) {
        inline-size: 100%;
      }
      figure {
        margin: 0;
        display: grid;
        gap: var(--s1);
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: auto;
        aspect-ratio: 8 / 5;
      }
      :host([size='fill']) svg {
        aspect-ratio: var(--card-ratio, 8 / 5);
      }
      figcaption {
        display: grid;
        line-height: 1.25;
      }
      @media print {
        :host([size]) {
          max-inline-size: 62mm;
        }
      }
      .heading {
        font-weight: 700;
        text-wrap: balance;
      }
      :host([size='l']) .heading,
      :host([size='fill']) .heading {
        font-size: var(--t-lead);
      }
      :host([size='s']) figcaption {
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.patch = undefined;
    this.overBlack = undefined;
    this.ground = undefined;
    this.heading = '';
    this.interval = undefined;
    this.pulled = 1;
    this.size = 'm';
    this.plain = false;
  }

  /** Everything the patch says, in one line. */
  get words(): string {
    const t = partsWords();
    if (!this.patch) return [this.heading, t.bareCard].filter(Boolean).join(': ');
    const shown = onThisScreen(this.patch.lab).shown;
    return [
      this.heading,
      patchName(this.patch),
      this.overBlack ? `${t.overBlack} ${patchName(this.overBlack)}` : '',
      this.interval === undefined ? '' : t.interval(num(this.interval, 1)),
      shown ? '' : t.outsideShort,
    ]
      .filter(Boolean)
      .join(', ');
  }

  override render() {
    return html`<figure>
      <svg viewBox="0 0 160 100" preserveAspectRatio="none" role="img" aria-label=${this.words}>
        <rect width="80.2" height="100" fill="#0b0b0b"></rect>
        <rect x="80" width="80" height="100" fill="#ececec"></rect>
        ${this.ground ? svg`<rect width="160" height="100" fill=${onThisScreen(this.ground.lab).css}></rect>` : nothing}
        ${this.#film()}
      </svg>
      ${this.plain ? nothing : this.#caption()}
    </figure>`;
  }

  #film() {
    if (!this.patch) return nothing;
    const white = onThisScreen(this.patch.lab);
    const black = this.overBlack ? onThisScreen(this.overBlack.lab) : white;
    const end = 10 + 140 * Math.min(1, Math.max(0, this.pulled));
    const left = Math.max(0, Math.min(end, 80) - 10);
    const right = Math.max(0, end - 80);
    const mark = white.shown && black.shown;
    return svg`
      <rect x="10" y="16" width=${left} height="68" fill=${black.css}></rect>
      <rect x="79.8" y="16" width=${right > 0 ? right + 0.2 : 0} height="68" fill=${white.css}></rect>
      ${mark ? nothing : gamutMark(150, 84, 18)}
    `;
  }

  #caption() {
    const t = partsWords();
    const { patch } = this;
    return html`<figcaption aria-hidden="true">
      ${this.heading ? html`<span class="heading">${this.heading}</span>` : nothing}
      ${
        patch
          ? html`<span>${patchName(patch)}</span> ${
                this.interval === undefined
                  ? nothing
                  : html`<span class="small">${t.interval(num(this.interval, 1))}</span>`
              }
              ${onThisScreen(patch.lab).shown ? nothing : html`<span class="small">${t.outsideScreen}</span>`}`
          : html`<span>${t.bareCard}</span>`
      }
    </figcaption>`;
  }
}
define('tl-drawdown', TlDrawdown);
