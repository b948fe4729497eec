import { css, html, nothing, svg } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num } from '../../text/numbers.ts';
import './ladder-paper.ts';
import { type PlannedRung, ratioSigma } from './planned-rung.ts';
import { rungName } from './target.ts';

/**
 * The ladder card: what to weigh for each rung, as bars and figures on the screen, as a table with boxes on paper.
 */
export class TlLadderCard extends TlElement {
  static override properties = {
    label: { type: String },
    plan: { attribute: false },
    rungs: { attribute: false },
  };
  declare label: string;
  declare plan: Ladder['plan'] | undefined;
  declare rungs: readonly PlannedRung[];

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      .pours {
        list-style: none;
        padding: 0;
        margin: 0;
        max-inline-size: none;
        display: grid;
      }
      .pours li {
        display: grid;
        grid-template-columns: 8rem minmax(6rem, 20rem) minmax(0, 1fr);
        gap: 4px var(--s3);
        align-items: center;
        border-block-start: var(--rule);
        padding-block: 10px;
      }
      .pours li:last-child {
        border-block-end: var(--rule);
      }
      .pours b,
      .pours .grams {
        font-size: var(--t-lead);
        font-weight: 700;
      }
      .pours svg {
        display: block;
        inline-size: 100%;
        block-size: 40px;
      }
      .good {
        display: block;
        font-size: var(--t-small);
      }
      @media (max-width: 44rem) {
        .pours li {
          grid-template-columns: 6.5rem minmax(0, 1fr);
        }
        .pours .what {
          grid-column: 1 / -1;
        }
      }
      @media print {
        :host {
          display: block;
        }
        .pours {
          display: none;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.plan = undefined;
    this.rungs = [];
  }

  override render() {
    const { plan } = this;
    if (!plan) return nothing;
    const t = ladderWords();
    return html`
      <ol class="pours" aria-label=${t.planTable}>
        ${this.rungs.map((rung) => this.#pours(rung, plan.scaleResolution))}
      </ol>
      <tl-ladder-paper label=${this.label} .plan=${plan} .rungs=${this.rungs}></tl-ladder-paper>
    `;
  }

  /** What goes into one rung, as a bar of its parts and in figures read from the scale's side. */
  #pours(rung: PlannedRung, step: number) {
    const t = ladderWords();
    const all = rung.parts.reduce((sum, p) => sum + p.plannedGrams, 0);
    let x = 0;
    const bars = rung.parts.map((part, i) => {
      const width = (160 * part.plannedGrams) / all;
      const at = x;
      x += width;
      const fill = i > 0 ? '#ececec' : part.fromRungId ? '#6a6a6a' : '#2b2b2b';
      return svg`<rect x=${at} width=${width + 0.2} height="20" fill=${fill}></rect>`;
    });
    return html`<li>
      <b>${rungName(rung)}</b>
      <svg viewBox="0 0 160 20" preserveAspectRatio="none" aria-hidden="true">${bars}</svg>
      <span class="what">
        ${rung.parts.map(
          (part, i) =>
            html`${i > 0 ? ' + ' : ''}<span class="grams">${grams(part.plannedGrams, step)}</span> ${
                part.fromRungId ? t.from(part.label) : part.label
              }`,
        )}
        ${
          rung.parts.length > 1
            ? html`<span class="good">${t.ratioError} ${num(100 * ratioSigma(rung), 1)} %</span>`
            : nothing
        }
      </span>
    </li>`;
  }
}
define('tl-ladder-card', TlLadderCard);
