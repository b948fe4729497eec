import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Answer } from '../../api/call.ts';
import '../../parts/figures.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { replaceWords } from '../../text/replace.ts';
import { recipeWords } from '../checks/recipe-words.ts';
import { type ReplacedRecipe, recipesInOrder } from './replaced-recipes.ts';
import { said } from '../../text/said.ts';

/** What a new tube changes: how it differs from the old one, and recipes in grams before and after. */
export class TlReplaced extends TlElement {
  static override properties = {
    replaced: { attribute: false },
    profile: { attribute: false },
    old: { type: String },
    newLabel: { type: String },
  };
  declare replaced: Answer<'replaceTube'>;
  declare profile: PaletteProfile;
  declare old: string;
  declare newLabel: string;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
    `,
  ];

  override render() {
    const t = replaceWords();
    const { sentences, strengthPercent, colours, recipes } = this.replaced;
    return html`<div aria-live="polite">${sentences.map((s) => html`<p>${said(s)}</p>`)}</div>
      <h3>${t.difference}</h3>
      <tl-figures
        .figures=${[
          {
            name: t.strength,
            figure: `${num(strengthPercent.value, 0)} %`,
            means: t.strengthMeans(`${num(strengthPercent.sd, 1)} %`),
          },
          ...colours.map((c) => ({
            name: c.of,
            figure: num(c.deltaE00, 1),
            means: `CIEDE2000, ${c.beyondDoubt ? t.beyond : t.within}`,
          })),
        ]}
      ></tl-figures>
      <h3>${t.recipes}</h3>
      ${recipes.length === 0 ? html`<p>${t.noRecipes}</p>` : this.#recipes()}`;
  }

  #recipes() {
    const t = replaceWords();
    const { recipes, tubeId } = this.replaced;
    const { first, rest, lost, moving, same } = recipesInOrder(recipes, this.old, tubeId);
    return html`<p>${t.recipesSay(num(lost, 0), num(moving, 0), num(same, 0))}</p>
      ${first.length > 0 ? this.#table(t.changing, first) : nothing}
      ${
        rest.length > 0
          ? html`<details>
              <summary>${first.length > 0 ? t.restOf(num(rest.length, 0)) : t.showAll}</summary>
              ${this.#table(t.recipes, rest)}
            </details>`
          : nothing
      }`;
  }

  #table(caption: string, recipes: readonly ReplacedRecipe[]) {
    const t = replaceWords();
    return html`<tl-table
      caption=${caption}
      .columns=${[
        { heading: t.before },
        { heading: t.after },
        { heading: t.colour, unit: 'CIEDE2000', figures: true },
      ]}
      .rows=${recipes.map((r) => [
        recipeWords(r.before, this.profile),
        r.outcome === 'out of reach' ? `${t.outOfReach} ${this.#words(r.masses)}` : this.#words(r.masses),
        num(r.deltaE00, 1),
      ])}
    ></tl-table>`;
  }

  /** The new tube is in no profile yet: it has the name it was given. */
  #words(masses: Readonly<Record<string, number>>): string {
    const { tubeId } = this.replaced;
    const tubes = [
      { id: tubeId, label: this.newLabel },
      ...this.profile.tubes.filter((tube) => tube.id !== tubeId),
    ];
    return recipeWords(masses, { tubes });
  }
}
define('tl-replaced', TlReplaced);
