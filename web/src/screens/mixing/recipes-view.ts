import { html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { mixingWords } from '../../text/mixing.ts';
import { type MixTable, changeTable } from './mix-state.ts';
import { type Made } from './recipe-list.ts';

/** Further out of reach than this, the hue family is worth asking for, CIEDE2000. Our choice. */
const FAR = 10;

/** The recipes found, and what to hold on to where the colour is far out of reach. */
export function recipesView(profile: PaletteProfile, table: MixTable, holdHue: () => void) {
  const t = mixingWords();
  const { recipes, wanted, priority } = table;
  if (!recipes || !wanted) return nothing;
  const best = recipes.list[0];
  return html`<section class="stack">
    <h2>${t.recipes}</h2>
    <p>${recipes.reached ? t.reached : t.notReached}</p>
    ${
      priority !== 'hue' && best && best.deltaE00 > FAR
        ? html`<p>${t.tryHue}</p>
            <div><button type="button" @click=${holdHue}>${t.holdHue}</button></div>`
        : nothing
    }
    <tl-recipe-list
      .recipes=${recipes.list}
      .wanted=${wanted.lab}
      .profile=${profile}
      @tl-put=${(e: CustomEvent<Made>) => changeTable(e.detail)}
    ></tl-recipe-list>
  </section>`;
}
