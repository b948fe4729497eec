import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/compare.ts';
import '../../parts/drawdown.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { grams, num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { firstMixes, weighings } from '../mixing/pour-words.ts';
import type { FamilyRow } from './family-rows.ts';
import { pourSays, reachSays } from './family-words.ts';

/** Families from the darkest up: the picture's colour beside what the palette gives, and the grams for its area. */
export class TlFamilyList extends TlElement {
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
      ol {
        list-style: none;
        padding: 0;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr));
        gap: var(--s4) var(--s3);
        max-inline-size: none;
      }
      li {
        display: grid;
        gap: 6px;
        align-content: start;
        break-inside: avoid;
      }
      h3 {
        display: flex;
        align-items: baseline;
        gap: 12px;
        font-weight: 450;
      }
      h3 b {
        font-size: var(--t-title);
        line-height: 1;
      }
      dl {
        display: grid;
      }
      dl div {
        display: flex;
        justify-content: space-between;
        gap: var(--s2);
        border-block-end: var(--rule);
        padding-block: 3px;
      }
      dd {
        margin: 0;
        font-weight: 700;
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
    return html`<ol>
      ${this.rows.map((row) => this.#row(row))}
    </ol>`;
  }

  #row(row: FamilyRow) {
    const t = studyWords();
    const { family, mix, recipe, poured } = row;
    const pour = poured?.pour;
    const wanted = { lab: family.lab, value: family.value };
    return html`<li>
      <h3>
        <b>${num(row.number, 0)}</b>
        <span
          >${t.step(num(family.step + 1, 0))} ${t.sides[family.side]},
          ${t.area(`${num(100 * family.share, 0)} %`)}</span
        >
      </h3>
      ${
        mix
          ? html`<tl-compare
              .patches=${[wanted, mix]}
              .names=${[t.picture, t.paint]}
              .difference=${(pour?.preTint ?? pour ?? recipe)?.deltaE00}
            ></tl-compare>`
          : html`<tl-drawdown size="fill" .patch=${wanted} heading=${t.picture}></tl-drawdown>`
      }
      ${
        recipe
          ? html`<p>${reachSays(row)}</p>
              ${firstMixes(pour, this.profile, this.resolution).map((first) => html`<p><b>${first}</b></p>`)}
              <dl>
                ${(pour ? weighings(pour, this.profile) : []).map(
                  ({ what, grams: g }) =>
                    html`<div>
                      <dt>${what}</dt>
                      <dd>${grams(g, this.resolution)}</dd>
                    </div>`,
                )}
              </dl>
              ${pourSays(row, this.resolution).map((note) => html`<p class="small">${note}</p>`)}`
          : nothing
      }
    </li>`;
  }
}
define('tl-family-list', TlFamilyList);
