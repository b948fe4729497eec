import { css, html, nothing, svg } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import { setStyle } from '../../design/set-style.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num, when } from '../../text/numbers.ts';
import { partsWords } from '../../text/parts.ts';
import { sheetWords } from '../../text/sheets.ts';
import { type PlannedRung, ratioSigma } from './planned-rung.ts';
import { rungName } from './target.ts';

/** The black half of a card in hatching: ink-sparing, and no printer leaves it out as a background. */
const HATCH = html`<svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
  ${Array.from(
    { length: 33 },
    (_, i) =>
      svg`<line x1=${i * 6 - 100} y1="100" x2=${i * 6} y2="0" stroke="#000" stroke-width="0.8" vector-effect="non-scaling-stroke"></line>`,
  )}
</svg>`;

/**
 * The ladder card on paper: what to weigh for each rung with room to write, and a box to pull each drawdown into, half
 * of it hatched where a card would be black.
 */
export class TlLadderPaper extends TlElement {
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
        display: none;
      }
      @media print {
        :host {
          display: block;
        }
        p {
          max-inline-size: none;
          font-size: var(--t-small);
          line-height: 1.3;
        }
        .heading {
          display: flex;
          justify-content: space-between;
          align-items: baseline;
          border-block-end: 1.5pt solid #000;
          padding-block-end: 1.5mm;
          margin-block-end: 1.5mm;
        }
        p.blanks {
          display: flex;
          gap: 4mm;
          margin-block: 4mm 2mm;
          font-size: var(--t-body);
        }
        .blanks span {
          display: flex;
          gap: 1.5mm;
          white-space: nowrap;
        }
        .blanks span:not(.said) {
          flex: 1;
        }
        .blanks i {
          flex: 1;
          border-block-end: 0.5pt solid #000;
        }
        table {
          border-collapse: collapse;
          inline-size: 100%;
          line-height: 1.2;
        }
        caption {
          text-align: start;
          font-weight: 700;
          padding-block-end: 1mm;
        }
        th,
        td {
          text-align: start;
          padding: 0 2mm 0 0;
          block-size: 6.6mm;
          border-block-end: 0.5pt solid #000;
        }
        thead th {
          vertical-align: bottom;
          border-block-end: 1.5pt solid #000;
          padding-block-end: 1mm;
        }
        .figures {
          text-align: end;
          padding-inline-end: 4mm;
        }
        .unit {
          display: block;
          font-weight: 400;
        }
        /* Left white to write in, with a line to keep to. */
        .write {
          inline-size: 25mm;
          padding-inline: 2mm 0;
          border-inline: 0.5pt solid #000;
        }
        tbody + tbody {
          border-block-start: 1pt solid #000;
        }
        tbody {
          break-inside: avoid;
        }
        .boxes {
          display: grid;
          grid-template-columns: 1fr 1fr;
          gap: 4mm 5mm;
          margin-block: 5mm 3mm;
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
    const sheet = sheetWords();
    const step = plan.scaleResolution;
    return html`
      <div class="heading">
        <h1>${t.cardTitle(this.label)}</h1>
        <span>${partsWords().printed(when(new Date().toISOString(), false))}</span>
      </div>
      <p>${sheet.ladderIs}</p>
      <p class="blanks">
        <span>${t.cardDate}<i></i></span>
        <span>${sheet.batch}<i></i></span>
        <span>${sheet.bar}<i></i>µm</span>
        <span>${sheet.readBy}<i></i></span>
      </p>
      ${this.#table(step)}
      <div class="boxes" ${setStyle({ '--box': this.rungs.length > 4 ? '31mm' : '50mm' })}>
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
      <p>${t.cardNote} ${partsWords().defer}</p>
    `;
  }

  /** The weighing table on paper: what the plan asks for, and room for what the scale, the day and the film were. */
  #table(step: number) {
    const t = ladderWords();
    const sheet = sheetWords();
    const bare = (g: number): string => grams(g, step).replace(/\s*g$/, '');
    return html`<table>
      <caption>
        ${t.planTable}. ${t.cardScale}: ${grams(step, step)}.
        ${this.plan ? t.methodUsed[this.plan.method] : ''}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t.rung}</th>
          <th scope="col">${t.pour}</th>
          <th scope="col" class="figures">${t.planned}<span class="unit">g</span></th>
          <th scope="col" class="write">${t.weighed}<span class="unit">g</span></th>
          <th scope="col" class="figures">${t.ratioError}<span class="unit">%</span></th>
          <th scope="col" class="write">${sheet.pulledOn}</th>
          <th scope="col" class="write">${sheet.wetFilm}<span class="unit">µm</span></th>
        </tr>
      </thead>
      ${this.rungs.map((rung) => {
        const all = rung.parts.length;
        return html`<tbody>
          ${rung.parts.map(
            (part, i) =>
              html`<tr>
                ${i === 0 ? html`<th scope="rowgroup" rowspan=${all}>${rungName(rung)}</th>` : nothing}
                <td>${part.fromRungId ? t.from(part.label) : part.label}</td>
                <td class="figures">${bare(part.plannedGrams)}</td>
                <td class="write">${part.weighedGrams === null ? '' : bare(part.weighedGrams)}</td>
                ${
                  i === 0
                    ? html`<td class="figures" rowspan=${all}>
                          ${all > 1 ? num(100 * ratioSigma(rung), 1) : ''}
                        </td>
                        <td class="write" rowspan=${all}></td>
                        <td class="write" rowspan=${all}></td>`
                    : nothing
                }
              </tr>`,
          )}
        </tbody>`;
      })}
    </table>`;
  }
}
define('tl-ladder-paper', TlLadderPaper);
