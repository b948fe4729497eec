import { css, html, svg } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { onThisScreen, patchName } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { grams, num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { firstMixes, weighings } from '../mixing/pour-words.ts';
import type { FamilyRow } from './family-rows.ts';
import { pourSays, reachSays } from './family-words.ts';

/** Families in rows, for paper: number, picture against paint on one card, and what to weigh. */
export class TlFamilyTable extends TlElement {
  static override properties = {
    rows: { attribute: false },
    profile: { attribute: false },
    resolution: { type: Number },
  };
  declare rows: readonly FamilyRow[];
  declare profile: PaletteProfile | undefined;
  /** Steps of the scale, g. */
  declare resolution: number;

  static override styles = [
    TlElement.styles,
    css`
      table {
        border-collapse: collapse;
        inline-size: 100%;
        line-height: 1.25;
      }
      tr {
        break-inside: avoid;
      }
      th,
      td {
        text-align: start;
        vertical-align: middle;
        padding: 5px 12px 5px 0;
        border-block-end: var(--rule);
      }
      tbody th {
        font-size: var(--t-title);
        line-height: 1;
        inline-size: 2.2rem;
      }
      .patch {
        inline-size: 9.5rem;
      }
      svg {
        display: block;
        inline-size: 9rem;
        block-size: 3.4rem;
      }
      li {
        display: flex;
        justify-content: space-between;
        gap: 12px;
      }
      ul {
        list-style: none;
        padding: 0;
        max-inline-size: none;
      }
      b {
        white-space: nowrap;
      }
      @media (max-width: 44rem) {
        .says {
          display: none;
        }
        svg {
          inline-size: 6rem;
        }
        .patch {
          inline-size: 6.5rem;
        }
      }
      @media print {
        .says {
          display: table-cell;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.rows = [];
    this.profile = undefined;
    this.resolution = 0.01;
  }

  override render() {
    const t = studyWords();
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${t.number}</th>
          <th scope="col">${t.picture} | ${t.paint}</th>
          <th scope="col" class="says">${t.colour}</th>
          <th scope="col">${t.recipe}</th>
        </tr>
      </thead>
      <tbody>
        ${this.rows.map((row) => this.#row(row))}
      </tbody>
    </table>`;
  }

  #row(row: FamilyRow) {
    const t = studyWords();
    const { family, mix, poured } = row;
    const pour = poured?.pour;
    const wanted = { lab: family.lab, value: family.value };
    return html`<tr>
      <th scope="row">${num(row.number, 0)}</th>
      <td class="patch">
        <svg
          viewBox="0 0 160 60"
          preserveAspectRatio="none"
          role="img"
          aria-label=${patchName(mix ?? wanted)}
        >
          <rect width="160" height="30.2" fill="#ececec"></rect>
          <rect y="30" width="160" height="30" fill="#0b0b0b"></rect>
          ${half(wanted.lab, 6, 74.2)} ${half((mix ?? wanted).lab, 80, 74)}
        </svg>
      </td>
      <td class="says">
        ${patchName(mix ?? wanted)}, ${t.area(`${num(100 * family.share, 0)} %`)}. ${reachSays(row)}
      </td>
      <td>
        ${firstMixes(pour, this.profile, this.resolution).map((first) => html`<p class="small"><b>${first}</b></p>`)}
        <ul>
          ${(pour ? weighings(pour, this.profile) : []).map(
            ({ what, grams: g }) => html`<li><span>${what}</span><b>${grams(g, this.resolution)}</b></li>`,
          )}
        </ul>
        ${pourSays(row, this.resolution).map((note) => html`<p class="small">${note}</p>`)}
      </td>
    </tr>`;
  }
}

function half(lab: Lab, x: number, width: number) {
  return svg`<rect x=${x} y="6" width=${width} height="48" fill=${onThisScreen(lab).css}></rect>`;
}
define('tl-family-table', TlFamilyTable);
