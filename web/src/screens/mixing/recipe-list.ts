import { css, html } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { Masses } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchOfLab } from '../../design/patch.ts';
import '../../parts/compare.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { ScaleController } from '../../state/scale.ts';
import { grams, num } from '../../text/numbers.ts';
import type { FoundRecipe } from '../../workers/match-job.ts';
import { cardLink } from './card-link.ts';
import { inOrder, labelIn, pourNotes } from './pour-words.ts';

/** What is weighed: the pour where the scale can make one, else the recipe as it was found. */
export function pouredMasses({ recipe, pour }: FoundRecipe): Masses {
  return pour?.masses ?? recipe.masses;
}

/** Recipes, nearest first: each beside the wanted colour with no edge between. Sends `tl-put` with the recipe. */
export class TlRecipeList extends TlElement {
  static override properties = {
    recipes: { attribute: false },
    wanted: { attribute: false },
    profile: { attribute: false },
  };
  declare recipes: readonly FoundRecipe[];
  declare wanted: Lab;
  declare profile: PaletteProfile;
  readonly #scale = new ScaleController(this);

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
      ${this.recipes.map((found) => {
        const { recipe, pour } = found;
        const mix = pour ?? recipe;
        const used = pour ? inOrder(pour) : Object.entries(recipe.masses).sort(([, p], [, q]) => q - p);
        const { resolution } = this.#scale.value;
        return html`<li>
          <tl-compare
            .patches=${[patchOfLab(this.wanted), patchOfLab(mix.prediction.lab)]}
            .names=${[t.want, t.mix]}
            .difference=${mix.deltaE00}
          ></tl-compare>
          <p>${splitWords(mix.split)}</p>
          <dl>
            ${used.map(
              ([id, g]) =>
                html`<div>
                  <dt>${labelIn(this.profile, id)}</dt>
                  <dd>${grams(g, resolution)}</dd>
                </div>`,
            )}
          </dl>
          <p class="small">
            ${used.length === 1 ? t.oneTube : t.ofTubes(num(used.length, 0))}${
              used.length > 1
                ? `; ${t.slip(num(recipe.slip.deltaE00, 1), labelIn(this.profile, recipe.slip.tube))}`
                : ''
            }
          </p>
          ${(pour ? pourNotes(pour, this.profile, resolution) : []).map((note) => html`<p class="small">${note}</p>`)}
          <div class="row no-print">
            <button
              type="button"
              @click=${() => this.dispatchEvent(new CustomEvent<Masses>('tl-put', { detail: pouredMasses(found), bubbles: true }))}
            >
              ${t.put}
            </button>
            <a href=${cardLink(pouredMasses(found), this.wanted)}>${t.card}</a>
          </div>
        </li>`;
      })}
    </ol>`;
  }
}
define('tl-recipe-list', TlRecipeList);
