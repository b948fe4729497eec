import { type TemplateResult, html } from 'lit';
import { chartWords } from '../text/charts.ts';
import type { ChartTable } from './model.ts';
import { significant } from './numbers.ts';

/** The numbers behind a chart, folded away until wanted. */
export function numbersTable(table: ChartTable, heading: string): TemplateResult {
  const cell = (v: string | number): string => (typeof v === 'number' ? significant(v, 4) : v);
  return html`<details>
    <summary>${chartWords().numbers}</summary>
    <div class="scroll" tabindex="0" role="region" aria-label="${chartWords().numbers}: ${heading}">
      <table>
        <thead>
          <tr>
            ${table.head.map((h) => html`<th scope="col">${h}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${table.rows.map(
            (row) =>
              html`<tr>
                ${row.map((v, i) => (i === 0 ? html`<th scope="row">${cell(v)}</th>` : html`<td>${cell(v)}</td>`))}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </details>`;
}
