import { css, html, nothing, type TemplateResult } from 'lit';
import { TlElement, define } from './tl-element.ts';

export type Cell = string | TemplateResult;

export interface Column {
  readonly heading: string;
  /** Stands under the heading. */
  readonly unit?: string;
  /** Figures are set flush to the end. */
  readonly figures?: boolean;
}

/**
 * Numbers in rows. The first cell of a row names it. Scrolls by itself, by keyboard too, when it is too wide.
 *
 *   <tl-table caption="Weighing plan" .columns=${[...]} .rows=${[[...], ...]}></tl-table>
 */
export class TlTable extends TlElement {
  static override properties = {
    caption: { type: String },
    columns: { attribute: false },
    rows: { attribute: false },
  };
  declare caption: string;
  declare columns: readonly Column[];
  declare rows: readonly (readonly Cell[])[];

  static override styles = [
    TlElement.styles,
    css`
      .scroll {
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
        inline-size: 100%;
        line-height: 1.3;
      }
      caption {
        text-align: start;
        font-weight: 700;
        padding-block-end: 6px;
      }
      th,
      td {
        padding: 8px 12px 8px 0;
        padding-inline: 0 16px;
        text-align: start;
        vertical-align: baseline;
        border-block-end: var(--rule);
      }
      thead th {
        border-block-end: var(--edge);
        vertical-align: bottom;
      }
      .unit {
        display: block;
        font-weight: 400;
        font-size: var(--t-small);
      }
      .figures {
        text-align: end;
        white-space: nowrap;
      }
      .figures + :not(.figures) {
        padding-inline-start: 24px;
      }
      tbody th {
        font-weight: 650;
      }
    `,
  ];

  constructor() {
    super();
    this.caption = '';
    this.columns = [];
    this.rows = [];
  }

  override render() {
    const side = (i: number): string | typeof nothing => (this.columns[i]?.figures ? 'figures' : nothing);
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${this.caption}>
      <table>
        <caption>
          ${this.caption}
        </caption>
        <thead>
          <tr>
            ${this.columns.map(
              (c, i) =>
                html`<th scope="col" class=${side(i)}>
                  ${c.heading}${c.unit ? html`<span class="unit">${c.unit}</span>` : nothing}
                </th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${this.rows.map(
            (row) =>
              html`<tr>
                ${row.map((cell, i) =>
                  i === 0
                    ? html`<th scope="row" class=${side(i)}>${cell}</th>`
                    : html`<td class=${side(i)}>${cell}</td>`,
                )}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}
define('tl-table', TlTable);
