import { css, html } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { Recipe } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchOfLab } from '../../design/patch.ts';
import '../../parts/compare.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import { cardLink } from './card-link.ts';

/** Recipes, nearest first: each beside the wanted colour with no edge between. Sends `tl-put` with the recipe. */
export class TlRecipeList extends TlElement {
  static override properties = {
    recipes: { attribute: false },
    wanted: { attribute: false },
    profile: { attribute: false },
  };
  declare recipes: readonly Recipe[];
  declare wanted: Lab;
  declare profile: PaletteProfile;

  static override styles = [
    TlElement.styles,
    css`
      ol {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr));
        gap: var(--s4) var(--s3);
        padding: 0;
        list-style: none;
        max-inline-size: none;
      }
      li {
        display: grid;
        gap: 8px;
        align-content: start;
      }
      dl {
        display: grid;
        gap: 0;
      }
      dl div {
        display: flex;
        justify-content: space-between;
        gap: var(--s2);
        border-block-end: var(--rule);
        padding-block: 4px;
      }
      dd {
        margin: 0;
        font-weight: 700;
        font-size: var(--t-lead);
        line-height: 1.2;
      }
    `,
  ];

  override render() {
    const t = mixingWords();
    return html`<ol>
      ${this.recipes.map((recipe) => {
        const used = Object.entries(recipe.masses).sort(([, p], [, q]) => q - p);
        return html`<li>
          <tl-compare
            .patches=${[patchOfLab(this.wanted), { lab: recipe.prediction.lab, value: recipe.prediction.value }]}
            .names=${[t.want, t.mix]}
            .difference=${recipe.deltaE00}
          ></tl-compare>
          <p>${splitWords(recipe.split)}</p>
          <dl>
            ${used.map(
              ([id, grams]) =>
                html`<div>
                  <dt>${this.#label(id)}</dt>
                  <dd>${num(grams, 2)} g</dd>
                </div>`,
            )}
          </dl>
          <p class="small">
            ${used.length === 1 ? t.oneTube : t.ofTubes(num(used.length, 0))}${
              used.length > 1
                ? `; ${t.slip(num(recipe.slip.deltaE00, 1), this.#label(recipe.slip.tube))}`
                : ''
            }
          </p>
          <div class="row no-print">
            <button
              type="button"
              @click=${() => this.dispatchEvent(new CustomEvent<Recipe>('tl-put', { detail: recipe, bubbles: true }))}
            >
              ${t.put}
            </button>
            <a href=${cardLink(recipe.masses, this.wanted)}>${t.card}</a>
          </div>
        </li>`;
      })}
    </ol>`;
  }

  #label(id: string): string {
    return this.profile.tubes.find((tube) => tube.id === id)?.label ?? id;
  }
}
define('tl-recipe-list', TlRecipeList);
