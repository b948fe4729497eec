import { css, html, nothing, svg } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { Answer } from '../../api/call.ts';
import { setStyle } from '../../design/set-style.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num } from '../../text/numbers.ts';
import { rungName } from './target.ts';

/** The black half of a card in hatching: ink-sparing, and no printer leaves it out as a background. */
const HATCH = html`<svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
  ${Array.from(
    { length: 33 },
    (_, i) =>
      svg`<line x1=${i * 6 - 100} y1="100" x2=${i * 6} y2="0" stroke="#000" stroke-width="0.8" vector-effect="non-scaling-stroke"></line>`,
  )}
</svg>`;

type PlannedRung = Answer<'planLadder'>['rungs'][number];

/**
 * The ladder card: what to weigh for each rung, and on paper a box to pull each drawdown into, half of it printed
 * black where the printer can be spared nothing more than a hatch.
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
      .paper {
        display: none;
      }
      @media print {
        :host {
          display: block;
        }
        .paper {
          display: block;
        }
        .heading {
          display: flex;
          justify-content: space-between;
          align-items: baseline;
          border-block-end: 1.5pt solid #000;
          padding-block-end: 2mm;
        }
        .blanks {
          display: flex;
          gap: 10mm;
        }
        .boxes {
          display: grid;
          grid-template-columns: 1fr 1fr;
          gap: 5mm;
          margin-block: 5mm;
        }
        .box {
          break-inside: avoid;
          display: grid;
          grid-template-rows: auto 1fr;
          gap: 1mm;
        }
        .pull {
          block-size: var(--box, 42mm);
          border: 0.5pt solid #000;
          display: grid;
          grid-template-columns: 1fr 1fr;
          position: relative;
        }
        .pull svg {
          inline-size: 100%;
          block-size: 100%;
          border-inline-end: 0.5pt solid #000;
        }
        .name {
          display: flex;
          justify-content: space-between;
          font-size: 11pt;
          font-weight: 700;
        }
        .name span {
          font-weight: 400;
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
    const step = plan.scaleResolution;
    return html`
      <div class="paper">
        <div class="heading"><h1>${t.cardTitle(this.label)}</h1></div>
        <p class="blanks">
          <span>${t.cardDate}: ____________</span>
          <span>${t.cardScale}: ${grams(step, step)}</span>
          <span>${t.methodUsed[plan.method]}</span>
        </p>
      </div>
      <tl-table
        caption=${t.planTable}
        .columns=${[
          { heading: t.rung },
          { heading: t.pour },
          { heading: t.planned, unit: 'g', figures: true },
          { heading: t.weighed, unit: 'g', figures: true },
          { heading: t.ratioError, unit: '%', figures: true },
        ]}
        .rows=${this.rungs.flatMap((rung) =>
          rung.parts.map((part, i) => [
            i === 0 ? rungName(rung) : html`<span class="unseen">${rungName(rung)}</span>`,
            part.label,
            grams(part.plannedGrams, step).replace(/\s*g$/, ''),
            part.weighedGrams === null ? '______' : grams(part.weighedGrams, step).replace(/\s*g$/, ''),
            i === 0 && rung.parts.length > 1 ? num(100 * rung.shareRelativeSigma, 1) : '',
          ]),
        )}
      ></tl-table>
      <div class="paper">
        <div class="boxes" ${setStyle({ '--box': this.rungs.length > 4 ? '34mm' : '42mm' })}>
          ${this.rungs.map(
            (rung) =>
              html`<div class="box">
                <div class="name">${rungName(rung)} <span>${t.cardPull}</span></div>
                <div class="pull">
                  ${HATCH}
                  <div></div>
                </div>
              </div>`,
          )}
        </div>
        <p>${t.cardNote}</p>
      </div>
    `;
  }
}
define('tl-ladder-card', TlLadderCard);
