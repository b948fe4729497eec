import { css, html } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Answer } from '../../api/call.ts';
import '../../parts/figures.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { replaceWords } from '../../text/replace.ts';

type Masses = Readonly<Record<string, number>>;

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
    return html`<div aria-live="polite">${sentences.map((s) => html`<p>${s}</p>`)}</div>
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
      ${recipes.length === 0 ? html`<p>${t.noRecipes}</p>` : recipes.map((r) => this.#recipe(r))}`;
  }

  #recipe({ before, masses, sentence }: Answer<'replaceTube'>['recipes'][number]) {
    const t = replaceWords();
    const { tubeId } = this.replaced;
    const ids = [...new Set([...Object.keys(before), ...Object.keys(masses)])];
    const grams = (m: Masses, id: string): string => (m[id] === undefined ? '–' : num(m[id], 2));
    return html`<tl-table
      caption=${sentence}
      .columns=${[
        { heading: t.tube },
        { heading: t.before, unit: 'g', figures: true },
        { heading: t.after, unit: 'g', figures: true },
      ]}
      .rows=${ids.map((id) => [
        id === tubeId ? this.newLabel : (this.profile.tubes.find((tube) => tube.id === id)?.label ?? id),
        grams(before, id),
        grams(masses, id),
      ])}
    ></tl-table>`;
  }
}
define('tl-replaced', TlReplaced);
