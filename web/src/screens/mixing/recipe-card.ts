import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchBeside } from '../../design/patch.ts';
import '../../parts/compare.ts';
import '../../parts/drawdown.ts';
import '../../parts/empty.ts';
import '../../parts/next-step.ts';
import '../../parts/page-frame.ts';
import '../../parts/sheet-notes.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { RemoteController } from '../../state/remote.ts';
import { mixingWords } from '../../text/mixing.ts';
import { ScaleController } from '../../state/scale.ts';
import { grams, num } from '../../text/numbers.ts';
import { sheetWords } from '../../text/sheets.ts';
import { quickBench } from '../../workers/palette-controller.ts';
import type { OrderAnswer } from '../../workers/order-job.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import type { RecipeCardContent } from './card-link.ts';
import { firstMix, labelIn } from './pour-words.ts';

/** One recipe on paper: grams in the order they are poured, large, with boxes to tick and a field for the mix. */
export class TlRecipeCard extends TlElement {
  static override properties = { profile: { attribute: false }, content: { attribute: false } };
  declare profile: PaletteProfile;
  declare content: RecipeCardContent;
  readonly #mix = new RemoteController<PredictAnswer>(this);
  readonly #order = new RemoteController<OrderAnswer>(this);
  readonly #scale = new ScaleController(this);

  static override styles = [
    TlElement.styles,
    css`
      .card {
        display: grid;
        grid-template-columns: minmax(0, 1.2fr) minmax(0, 1fr);
        gap: var(--s4);
        max-inline-size: 60rem;
      }
      table {
        border-collapse: collapse;
        inline-size: 100%;
        align-self: start;
      }
      caption {
        text-align: start;
        font-weight: 700;
        padding-block-end: 8px;
      }
      .first {
        display: block;
        margin-block-start: 8px;
        font-size: var(--t-lead);
        line-height: 1.25;
      }
      th,
      td {
        text-align: start;
        padding: 12px 12px 12px 0;
        border-block-end: var(--rule);
        vertical-align: baseline;
      }
      tbody th {
        font-size: var(--t-lead);
        line-height: 1.2;
      }
      .how {
        display: block;
        font-size: var(--t-small);
        font-weight: 450;
      }
      .grams {
        font-size: var(--t-title);
        font-weight: 750;
        text-align: end;
        white-space: nowrap;
        line-height: 1;
      }
      .share {
        text-align: end;
        white-space: nowrap;
      }
      .tick {
        inline-size: 2.2rem;
      }
      .tick span {
        display: block;
        inline-size: 26px;
        block-size: 26px;
        border: var(--edge);
      }
      .write {
        display: none;
      }
      .paint {
        border: 1px dashed #000;
        background: #fff;
        color: #000;
        min-block-size: 9rem;
        padding: 6px 8px;
        font-size: var(--t-small);
      }
      @media (max-width: 44rem) {
        .card {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      @media print {
        .card {
          grid-template-columns: minmax(0, 1.9fr) minmax(0, 1fr);
          gap: 6mm;
          max-inline-size: none;
        }
        th,
        td {
          padding-block: 2.5mm;
        }
        tr.sum > * {
          border-block-end: 0;
        }
        /* Left white for what the scale said. */
        .write {
          display: table-cell;
          inline-size: 24mm;
          padding-inline: 2mm;
          border-inline: 0.5pt solid #000;
          text-align: end;
        }
        .paint {
          min-block-size: 62mm;
        }
        tl-sheet-notes {
          margin-block-start: 5mm;
        }
      }
    `,
  ];

  #shown = '';

  override willUpdate(): void {
    const { masses } = this.content;
    const key = JSON.stringify(masses);
    if (key !== this.#shown && Object.keys(masses).length > 0) {
      this.#shown = key;
      void this.#mix.run((signal) => quickBench.run('predict', { masses }, { signal }));
      void this.#order.run((signal) => quickBench.run('order', { masses }, { signal }));
    }
  }

  override render() {
    const t = mixingWords();
    const { masses, wanted } = this.content;
    const mix = this.#mix.value;
    const patch = mix && { lab: mix.lab, value: mix.value };
    const total = Object.values(masses).reduce((sum, g) => sum + g, 0);
    if (total === 0) {
      return html`<tl-page heading=${t.cardTitle}>
        <tl-next slot="next" label=${t.back} href=${linkTo('mixing')}></tl-next>
        <tl-empty heading=${t.noRecipe}></tl-empty>
      </tl-page>`;
    }
    return html`<tl-page heading=${t.cardTitle} lead=${sheetWords().recipeIs}>
      <tl-next slot="next" label=${t.print} @click=${() => window.print()}></tl-next>
      <a class="no-print" href=${linkTo('mixing')}>${t.back}</a>
      <div class="card">
        ${this.#table(total)}
        <div class="stack">
          ${
            patch && wanted
              ? html`<tl-compare
                  .patches=${[patchBeside(wanted, patch), patch]}
                  .names=${[t.want, t.mixedColour]}
                ></tl-compare>`
              : html`<tl-drawdown size="fill" .patch=${patch} heading=${t.mixedColour}></tl-drawdown>`
          }
          ${mix ? html`<p>${t.interval(range(mix.interval.value, t.to), range(mix.interval.lean, t.to))}</p>` : nothing}
          <div class="paint" aria-hidden="true">${t.paintHere}</div>
        </div>
      </div>
      <tl-sheet-notes
        .profile=${this.profile}
        white=${(wanted ?? mix?.lab)?.white ?? nothing}
      ></tl-sheet-notes>
    </tl-page>`;
  }

  #table(total: number) {
    const t = mixingWords();
    const { resolution } = this.#scale.value;
    const { preTints } = this.content;
    // What goes into the pre-tint is poured with it, not by itself.
    const inTints = (id: string): number =>
      preTints.reduce((sum, { strong, light, parts, pour }) => {
        const share = id === strong ? 1 : id === light ? parts : 0;
        return sum + (pour * share) / (1 + parts);
      }, 0);
    const steps = (this.#order.value ?? [])
      .map((step) => ({ ...step, grams: step.grams - inTints(step.tube) }))
      .filter((step) => step.grams > resolution / 2);
    return html`<table>
      <caption>
        ${t.order}
        ${preTints.map((tint, i) => html`<span class="first">${i + 1}. ${firstMix(tint, this.profile, resolution)}</span>`)}
      </caption>
      <thead>
        <tr>
          <th scope="col" class="tick"><span class="unseen">${t.weighed}</span></th>
          <th scope="col">${t.tubes}</th>
          <th scope="col" class="share">${t.share}</th>
          <th scope="col" class="share">${t.grams}</th>
          <th scope="col" class="write">${sheetWords().weighed}<br />g</th>
        </tr>
      </thead>
      <tbody>
        ${steps.map((step) => this.#row(labelIn(this.profile, step.tube), t.steps[step.how], step.grams, total))}
        ${preTints.map(({ strong, pour }) => this.#row(t.thePreTint(labelIn(this.profile, strong)), t.steps.add, pour, total))}
        <tr class="sum">
          <td class="tick"></td>
          <th scope="row">${sheetWords().total}</th>
          <td class="share"></td>
          <td class="grams">${grams(total, resolution)}</td>
          <td class="write"></td>
        </tr>
      </tbody>
    </table>`;
  }

  #row(what: string, how: string, weighed: number, total: number) {
    return html`<tr>
      <td class="tick"><span></span></td>
      <th scope="row">
        ${what}
        <span class="how">${how}</span>
      </th>
      <td class="share">${num((100 * weighed) / total, 1)} %</td>
      <td class="grams">${grams(weighed, this.#scale.value.resolution)}</td>
      <td class="write"></td>
    </tr>`;
  }
}

function range([low, high]: readonly [number, number], to: string): string {
  return `${num(low, 1)} ${to} ${num(high, 1)}`;
}
define('tl-recipe-card', TlRecipeCard);
