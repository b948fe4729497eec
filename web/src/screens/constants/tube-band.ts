import { css, html, nothing, svg } from 'lit';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { constantsWords } from '../../text/constants.ts';

/** A tube to choose: its masstone above its tint. */
export interface BandTube {
  readonly id: string;
  readonly label: string;
  readonly pigments: readonly string[];
  readonly white: boolean;
  readonly masstone: Patch | undefined;
  readonly tint: Patch | undefined;
  readonly href: string;
}

/** The tubes of a palette side by side on one long card; the one in view is marked. */
export class TlTubeBand extends TlElement {
  static override properties = { tubes: { attribute: false }, current: {} };
  declare tubes: readonly BandTube[];
  declare current: string;

  static override styles = [
    TlElement.styles,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(7.5rem, 1fr));
        gap: var(--s2) 0;
        list-style: none;
        padding: 0;
        max-inline-size: none;
      }
      a {
        display: grid;
        gap: 6px;
        text-decoration: none;
        line-height: 1.2;
      }
      a span {
        padding-inline-end: 10px;
      }
      a:hover b {
        text-decoration: underline;
        text-decoration-thickness: 2px;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 72px;
      }
      b {
        font-weight: 600;
        overflow-wrap: anywhere;
      }
      [aria-current] b {
        font-weight: 800;
      }
      [aria-current] svg {
        border-block-end: 6px solid var(--ink);
      }
      svg {
        border-block-end: 6px solid transparent;
      }
      small {
        display: block;
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.tubes = [];
    this.current = '';
  }

  override render() {
    const t = constantsWords();
    return html`<nav aria-label=${t.tubes}>
      <ul>
        ${this.tubes.map(
          (tube) =>
            html`<li>
              <a href=${tube.href} aria-current=${tube.id === this.current ? 'true' : nothing}>
                <svg viewBox="0 0 100 60" preserveAspectRatio="none" aria-hidden="true">
                  <rect width="100.5" height="30.3" fill="#0b0b0b"></rect>
                  <rect y="30" width="100.5" height="30" fill="#ececec"></rect>
                  ${tube.masstone ? pull(tube.masstone, 7, 23.2) : nothing}
                  ${tube.tint ? pull(tube.tint, 30, 23) : nothing}
                </svg>
                <span
                  ><b>${tube.label}</b
                  ><small>${tube.white ? t.white : tube.pigments.join(' + ')}</small></span
                >
              </a>
            </li>`,
        )}
      </ul>
    </nav>`;
  }
}

function pull(patch: Patch, y: number, height: number) {
  return svg`<rect x="6" y=${y} width="88" height=${height} fill=${onThisScreen(patch.lab).css}></rect>`;
}

define('tl-tube-band', TlTubeBand);
