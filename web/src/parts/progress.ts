import { css, html } from 'lit';
import { num } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * A film being pulled across a card. `share` is 0..1; without it the film goes back and forth (stands still under
 * reduced motion). Show it for anything that takes over half a second.
 *
 *   <tl-progress label="Fitting ultramarine" share="0.4"></tl-progress>
 */
export class TlProgress extends TlElement {
  static override properties = { label: { type: String }, share: { type: Number } };
  declare label: string;
  declare share: number | undefined;

  static override styles = [
    TlElement.styles,
    css`
      svg {
        display: block;
        inline-size: 100%;
        max-inline-size: 26rem;
        block-size: 28px;
      }
      .film {
        transition: width var(--quick) linear;
      }
      .roam {
        animation: roam 1.6s ease-in-out infinite alternate;
      }
      @keyframes roam {
        to {
          transform: translateX(70px);
        }
      }
      @media (prefers-reduced-motion: reduce) {
        .roam {
          animation: none;
        }
      }
      p {
        margin-block-end: 6px;
        font-weight: 650;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.share = undefined;
  }

  override render() {
    const label = this.label || partsWords().working;
    const known = this.share !== undefined;
    const share = Math.min(1, Math.max(0, this.share ?? 0));
    return html`<p>${label}${known ? html` · ${num(100 * share, 0)} %` : '…'}</p>
      <svg
        viewBox="0 0 160 20"
        preserveAspectRatio="none"
        role="progressbar"
        aria-label=${label}
        aria-valuemin="0"
        aria-valuemax="100"
        aria-valuenow=${known ? Math.round(100 * share) : 0}
      >
        <rect width="80.2" height="20" fill="#0b0b0b"></rect>
        <rect x="80" width="80" height="20" fill="#ececec"></rect>
        <rect
          class=${known ? 'film' : 'roam'}
          x="10"
          y="5"
          height="10"
          width=${known ? 140 * share : 70}
          fill="#777777"
        ></rect>
      </svg>`;
  }
}
define('tl-progress', TlProgress);
