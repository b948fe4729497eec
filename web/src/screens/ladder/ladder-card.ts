import { css, html, nothing, svg } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { Answer } from '../../api/call.ts';
import { setStyle } from '../../design/set-style.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num } from '../../text/numbers.ts';
import { rungName } from './target.ts';

/** Relative standard deviation of paint : white, from that of the paint's share x: d(x/(1-x)) = dx/(1-x)^2. */
export function ratioSigma(rung: Pick<PlannedRung, 'share' | 'shareRelativeSigma'>): number {
  return rung.shareRelativeSigma / Math.max(1e-9, 1 - rung.share);
}

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
      .paper,
      tl-table {
        display: none;
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
        .paper,
        tl-table {
          display: block;
        }
        .pours {
          display: none;
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
          margin-block: 2mm 5mm;
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
      <ol class="pours" aria-label=${t.planTable}>
        ${this.rungs.map((rung) => this.#pours(rung, step))}
      </ol>
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
            i === 0 && rung.parts.length > 1 ? num(100 * ratioSigma(rung), 1) : '',
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
