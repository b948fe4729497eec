import { css, html, nothing } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchBeside } from '../../design/patch.ts';
import '../../parts/compare.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { ScaleController } from '../../state/scale.ts';
import { grams, num } from '../../text/numbers.ts';
import type { FoundRecipe } from '../../workers/match-job.ts';
import { cardLink } from './card-link.ts';
import { type MixTable, withPreTints } from './mix-state.ts';
import { type Weighing, firstMixes, labelIn, pourNotes, weighings } from './pour-words.ts';

export type Made = Pick<MixTable, 'masses' | 'preTints'>;

/** A recipe as it goes on the table: the pour where the scale can make one, with its pre-tints where they are worth it. */
export function asMade({ recipe, pour }: FoundRecipe): Made {
  if (pour?.preTint) {
    const { masses, tints } = pour.preTint;
    return { masses: withPreTints(masses, tints), preTints: tints };
  }
  return { masses: pour?.masses ?? recipe.masses, preTints: [] };
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
        const mix = pour?.preTint ?? pour ?? recipe;
        const used: readonly Weighing[] = pour
          ? weighings(pour, this.profile)
          : Object.entries(recipe.masses)
              .sort(([, p], [, q]) => q - p)
              .map(([id, g]) => ({ what: labelIn(this.profile, id), grams: g }));
        const tubes = Object.keys(asMade(found).masses).length;
        const made = asMade(found);
        return html`<li>
          <tl-compare
            .patches=${[patchBeside(this.wanted, mix.prediction), mix.prediction]}
            .names=${[t.want, t.mix]}
            .difference=${mix.deltaE00}
          ></tl-compare>
          <p>${splitWords(mix.split)}</p>
          <dl>
            ${used.map(
              ({ what, grams: g }) =>
                html`<div>
                  <dt>${what}</dt>
                  <dd>${grams(g, resolution)}</dd>
                </div>`,
            )}
          </dl>
          ${firstMixes(pour, this.profile, resolution).map((first) => html`<p><b>${first}</b></p>`)}
          <p class="small">
            ${tubes === 1 ? t.oneTube : t.ofTubes(num(tubes, 0))}${
              tubes > 1
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
          ${(pour ? pourNotes(pour) : []).map((note) => html`<p class="small">${note}</p>`)}
          <div class="row no-print">
            <button
              type="button"
              @click=${() => this.dispatchEvent(new CustomEvent<Made>('tl-put', { detail: made, bubbles: true }))}
            >
              ${t.put}
            </button>
            <a href=${cardLink(made.masses, this.wanted, made.preTints)}>${t.card}</a>
          </div>
        </li>`;
      })}
    </ol>`;
  }
}
define('tl-recipe-list', TlRecipeList);
