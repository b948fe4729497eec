import { css, html, nothing } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
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
import { type MixTable, withPreTint } from './mix-state.ts';
import { firstMix, inOrder, labelIn, pourNotes } from './pour-words.ts';

export type Made = Pick<MixTable, 'masses' | 'preTint'>;

/** A recipe as it goes on the table: the pour where the scale can make one, with its pre-tint where that is worth it. */
export function asMade({ recipe, pour, made }: FoundRecipe): Made {
  if (pour?.preTint && made === 'with a pre-tint') {
    return { masses: withPreTint(pour.preTint.masses, pour.preTint), preTint: pour.preTint };
  }
  return { masses: pour?.masses ?? recipe.masses, preTint: undefined };
}

/** Recipes, nearest first: each beside the wanted colour with no edge between. Sends `tl-put` with what goes on the table. */
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
        const { resolution } = this.#scale.value;
        const tint = found.made === 'with a pre-tint' ? pour?.preTint : undefined;
        const mix = tint ?? pour ?? recipe;
        const used: readonly (readonly [string, number])[] = tint
          ? [
              ...inOrder(pour!).flatMap(([id]) =>
                tint.masses[id] === undefined ? [] : [[id, tint.masses[id]] as const],
              ),
              ['', tint.pour],
            ]
          : pour
            ? inOrder(pour)
            : Object.entries(recipe.masses).sort(([, p], [, q]) => q - p);
        const made = asMade(found);
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
                  <dt>${id === '' ? t.thePreTint : labelIn(this.profile, id)}</dt>
                  <dd>${grams(g, resolution)}</dd>
                </div>`,
            )}
          </dl>
          ${tint ? html`<p><b>${firstMix(tint, this.profile, resolution)}</b></p>` : nothing}
          <p class="small">
            ${used.length === 1 ? t.oneTube : t.ofTubes(num(Object.keys(made.masses).length, 0))}${
              used.length > 1
                ? `; ${t.slip(num(recipe.slip.deltaE00, 1), labelIn(this.profile, recipe.slip.tube))}`
                : ''
            }
          </p>
          ${
            recipe.metamerism
              ? html`<p class="small">
                  ${t.metamerism(recipe.metamerism.map((m) => `${t.underLamp[m.illuminant] ?? m.illuminant} ${num(m.deltaE00, 1)}`).join(', '))}
                </p>`
              : nothing
          }
          ${(pour && !tint ? pourNotes(pour, this.profile, resolution) : []).map((note) => html`<p class="small">${note}</p>`)}
          <div class="row no-print">
            <button
              type="button"
              @click=${() => this.dispatchEvent(new CustomEvent<Made>('tl-put', { detail: made, bubbles: true }))}
            >
              ${t.put}
            </button>
            <a href=${cardLink(made.masses, this.wanted, made.preTint)}>${t.card}</a>
          </div>
        </li>`;
      })}
    </ol>`;
  }
}
define('tl-recipe-list', TlRecipeList);
