import { css, html, nothing, svg } from 'lit';
import type { Ladder, Rung } from '../../../../server/api/ladders.ts';
import { gamutMark } from '../../design/gamut-mark.ts';
import { onThisScreen, patchName, patchOfColour } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { num } from '../../text/numbers.ts';
import { rungName } from './target.ts';

/**
 * The ladder itself: one card, a pull for each rung, masstone on top. What was read is painted, what is to come is
 * outlined. Pressing a rung chooses it, to be read again.
 */
export class TlRungStrip extends TlElement {
  static override properties = { ladder: { attribute: false }, at: { type: String } };
  declare ladder: Ladder | undefined;
  /** The rung that is on the table. */
  declare at: string;

  static override styles = [
    TlElement.styles,
    css`
      ol {
        list-style: none;
        padding: 0;
        margin: 0;
        max-inline-size: none;
      }
      button {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 9.5rem;
        gap: 0 12px;
        align-items: center;
        inline-size: 100%;
        padding: 0;
        border: 0;
        font-weight: 400;
        line-height: 1.2;
      }
      button:hover:not(:disabled) {
        background: transparent;
        text-decoration: underline;
      }
      button:active:not(:disabled) {
        background: transparent;
        color: inherit;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: clamp(4rem, 11vh, 7rem);
      }
      b {
        display: block;
        font-size: var(--t-lead);
      }
      [aria-current] b {
        text-decoration: underline;
        text-decoration-thickness: 4px;
        text-underline-offset: 4px;
      }
      @media (max-width: 34rem) {
        button {
          grid-template-columns: minmax(0, 1fr) 8rem;
        }
        svg {
          block-size: 3.5rem;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.ladder = undefined;
    this.at = '';
  }

  override render() {
    const { ladder } = this;
    if (!ladder) return nothing;
    return html`<ol aria-label=${ladderWords().rungList}>
      ${ladder.rungs.map((rung) => html`<li>${this.#rung(rung)}</li>`)}
    </ol>`;
  }

  #rung(rung: Rung) {
    const t = ladderWords();
    const kept = rung.need.reduce((n, x) => n + Math.min(x.kept, x.wanted), 0);
    const wanted = rung.need.reduce((n, x) => n + x.wanted, 0);
    const state = rung.done
      ? t.rungState.done
      : rung.weighed || kept > 0
        ? t.rungState.read(num(kept, 0), num(wanted, 0))
        : t.rungState.weigh;
    const patch = rung.colour ? patchOfColour(rung.colour) : undefined;
    const pulled = 140 * Math.min(1, kept / Math.max(1, wanted));
    const current = rung.id === this.at;
    return html`<button
      type="button"
      aria-current=${current ? 'step' : nothing}
      @click=${() => this.#choose(rung.id)}
    >
      <svg viewBox="0 0 160 40" preserveAspectRatio="none" aria-hidden="true">
        <rect width="80.2" height="40" fill="#0b0b0b"></rect>
        <rect x="80" width="80" height="40" fill="#ececec"></rect>
        ${
          patch
            ? svg`<rect x="10" y="6" width=${pulled} height="28" fill=${onThisScreen(patch.lab).css}></rect>
              ${onThisScreen(patch.lab).shown || pulled < 20 ? nothing : gamutMark(10 + pulled, 34, 10)}`
            : nothing
        }
        ${
          rung.done
            ? nothing
            : svg`<rect x="10.5" y="6.5" width="139" height="27" fill="none" stroke="#777777" stroke-dasharray="3 3" vector-effect="non-scaling-stroke"></rect>`
        }
      </svg>
      <span
        ><b>${rungName(rung)}</b
        >${state}${patch ? html`<span class="unseen">, ${patchName(patch)}</span>` : nothing}</span
      >
    </button>`;
  }

  #choose(detail: string): void {
    this.dispatchEvent(new CustomEvent<string>('tl-choose', { detail, bubbles: true, composed: true }));
  }
}
define('tl-rung-strip', TlRungStrip);
