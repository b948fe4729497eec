import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/compare.ts';
import '../../parts/drawdown.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { splitWords } from '../../text/differences.ts';
import { num } from '../../text/numbers.ts';
import { smallGrams } from '../../text/small-grams.ts';
import { studyWords } from '../../text/study.ts';
import type { FamilyRow } from './family-rows.ts';

/** About the least difference seen edge to edge, CIEDE2000. Common practice, no source. */
const JUST_VISIBLE = 1;

/** Families from the darkest up: the picture's colour beside what the palette gives, and the grams for its area. */
export class TlFamilyList extends TlElement {
  static override properties = {
    rows: { attribute: false },
    profile: { attribute: false },
  };
  declare rows: readonly FamilyRow[];
  declare profile: PaletteProfile | undefined;

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
  }

  override render() {
    return html`<ol>
      ${this.rows.map((row) => this.#row(row))}
    </ol>`;
  }

  #reach(reached: boolean, recipe: NonNullable<FamilyRow['recipe']>): string {
    const t = studyWords();
    if (reached) return t.reached;
    return `${recipe.deltaE00 < JUST_VISIBLE ? t.nearly : t.notReached} ${splitWords(recipe.split)}.`;
  }

  #row(row: FamilyRow) {
    const t = studyWords();
    const { family, mix, recipe, amount } = row;
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
              .difference=${recipe?.deltaE00}
            ></tl-compare>`
          : html`<tl-drawdown size="fill" .patch=${wanted} heading=${t.picture}></tl-drawdown>`
      }
      ${
        recipe
          ? html`<p>${this.#reach(row.reached, recipe)}</p>
              <dl>
                ${Object.entries(amount?.grams ?? {})
                  .sort(([, p], [, q]) => q - p)
                  .map(
                    ([id, grams]) =>
                      html`<div>
                        <dt>${this.profile?.tubes.find((tube) => tube.id === id)?.label ?? id}</dt>
                        <dd>${smallGrams(grams)}</dd>
                      </div>`,
                  )}
              </dl>`
          : nothing
      }
    </li>`;
  }
}
define('tl-family-list', TlFamilyList);
