import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { PRIORITIES, type Masses, type Priority, type Wanted } from '../../../../src/mix/index.ts';
import { type Patch, patchOfReflectance } from '../../design/patch.ts';
import '../../parts/choice.ts';
import '../../parts/empty.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, goTo, linkTo } from '../../shell/route.ts';
import { BenchState } from '../../state/bench-state.ts';
import { ScaleController } from '../../state/scale.ts';
import { RemoteController } from '../../state/remote.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import type { MatchAnswer } from '../../workers/match-job.ts';
import { PaletteController, quickBench, searchBench } from '../../workers/palette-controller.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import { cardContent, cardLink } from './card-link.ts';
import { MixTableController, type WantedColour, changeTable } from './mix-state.ts';
import './nudge-panel.ts';
import { pileView } from './pile-view.ts';
import './recipe-card.ts';
import './scale-fields.ts';
import { pouredMasses } from './recipe-list.ts';
import './addition-panel.ts';
import './tube-pulls.ts';
import './wanted-form.ts';

/** Further out of reach than this, the hue family is worth asking for, CIEDE2000. Our choice. */
const FAR = 10;

/** Recipes from one's own tubes, and the pile as it is: `#/mixing`, and `#/mixing/card?...` to print. */
export class TlMixingScreen extends TlElement {
  static override properties = { route: { attribute: false }, share: { state: true } };
  declare route: Route | undefined;
  declare share: number;
  readonly #bench = new BenchState(this);
  readonly #table = new MixTableController(this);
  readonly #scale = new ScaleController(this);
  readonly #palette = new PaletteController(this, (palette) => {
    if (palette.status === 'open') void this.#masstones(palette.profile);
  });
  readonly #stones = new RemoteController<ReadonlyMap<string, Patch>>(this);
  readonly #mix = new RemoteController<PredictAnswer>(this);
  readonly #match = new RemoteController<MatchAnswer | undefined>(this);
  #shown: unknown;

  static override styles = [
    TlElement.styles,
    css`
      .table {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
        gap: var(--s4);
        align-items: start;
      }
      .pile {
        position: sticky;
        inset-block-start: var(--s3);
        display: grid;
        gap: 8px;
        --card-ratio: 8 / 4.4;
      }
      .asked {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr));
        gap: var(--s2) var(--s3);
        align-items: end;
      }
      .scale {
        max-inline-size: 32rem;
      }
      @media (max-width: 60rem) {
        .table {
          grid-template-columns: minmax(0, 1fr);
        }
        .pile {
          inset-block-start: 0;
          background: var(--ground);
          padding-block: 8px;
          z-index: 2;
          --card-ratio: 8 / 2.4;
        }
        .pile .small {
          display: none;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.share = 0;
  }

  async #masstones(profile: PaletteProfile): Promise<void> {
    // Tubes of another palette mean nothing here.
    const known = new Set(profile.tubes.map((tube) => tube.id));
    const { masses } = this.#table.value;
    changeTable({ masses: Object.fromEntries(Object.entries(masses).filter(([id]) => known.has(id))) });
    await this.#stones.run(async (signal) => {
      const made = await Promise.all(
        profile.tubes.map(async ({ id }) => {
          const { reflectance } = await quickBench.run('predict', { masses: { [id]: 1 } }, { signal });
          return [id, patchOfReflectance(reflectance)] as const;
        }),
      );
      return new Map(made);
    });
  }

  override willUpdate(): void {
    const { masses } = this.#table.value;
    if (masses === this.#shown || this.#palette.value.status !== 'open') return;
    this.#shown = masses;
    const used = Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0));
    if (Object.keys(used).length > 0) {
      void this.#mix.run((signal) => quickBench.run('predict', { masses: used }, { signal }));
    }
  }

  override render() {
    const t = mixingWords();
    const palette = this.#palette.value;
    if (palette.status === 'pending') {
      return html`<tl-page heading=${t.title} lead=${t.lead}
        ><tl-progress label=${t.fetching}></tl-progress
      ></tl-page>`;
    }
    if (palette.status === 'error') {
      return html`<tl-page heading=${t.title}
        ><tl-notice kind="error" live>${palette.error.message}</tl-notice></tl-page
      >`;
    }
    if (palette.status === 'none') {
      return html`<tl-page heading=${t.title} lead=${t.lead}>
        <tl-next slot="next" label=${t.toRack} href=${linkTo('rack')}></tl-next>
        <tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>
      </tl-page>`;
    }
    const { profile } = palette;
    const { wanted, masses } = this.#table.value;
    if (this.route?.args[0] === 'card') {
      return html`<tl-recipe-card
        .profile=${profile}
        .content=${cardContent(this.route.query)}
      ></tl-recipe-card>`;
    }
    return html`<tl-page
      heading=${t.title}
      lead=${t.lead}
      .terms=${['recipe', 'value', 'lean', 'chroma', 'masstone', 'difference']}
    >
      <div slot="next">${this.#next()}</div>
      <div class="table">
        <div class="pile">
          ${pileView(wanted, Object.values(masses).some((g) => g > 0) ? this.#mix.value : undefined)}
        </div>
        <section class="stack" aria-label=${t.tubes}>
          <tl-tube-pulls .profile=${profile} .masstones=${this.#stones.value ?? new Map()}></tl-tube-pulls>
        </section>
      </div>
      ${this.#wanted()} ${this.#recipes(profile)} ${this.#addition(profile)}
    </tl-page>`;
  }

  #next() {
    const t = mixingWords();
    const { wanted, priority, recipes, masses } = this.#table.value;
    if (this.#match.pending) {
      return html`<tl-progress label=${t.finding} .share=${this.share}></tl-progress>
        <button type="button" @click=${() => this.#match.set(undefined)}>${t.stop}</button>`;
    }
    if (!wanted) {
      return html`<tl-next label=${t.nameColour} hint=${t.nameHint} @click=${this.#toWanted}></tl-next>`;
    }
    const onTable = Object.values(masses).some((g) => g > 0);
    if (recipes && onTable) {
      return html`<tl-next
        label=${t.weigh}
        hint=${t.weighHint}
        href=${cardLink(masses, wanted.lab)}
      ></tl-next>`;
    }
    return html`<tl-next
      label=${t.find}
      hint=${t.findHint(t.priorities[priority])}
      @click=${() => void this.#find()}
    ></tl-next>`;
  }

  #wanted() {
    const t = mixingWords();
    const { priority, maxTubes, amount, wanted } = this.#table.value;
    return html`<section class="stack" id="wanted">
      <h2 tabindex="-1">${t.wanted}</h2>
      <tl-wanted-form
        .headReady=${this.#bench.value?.instrument.readyToRead === true}
        .wanted=${wanted}
        @tl-wanted=${(e: CustomEvent<WantedColour | undefined>) => this.#want(e.detail)}
      ></tl-wanted-form>
      <div class="asked">
        <tl-choice
          label=${t.priority}
          .value=${priority}
          .options=${(
            ['value', 'evenly', 'hue'] as const satisfies typeof PRIORITIES | readonly Priority[]
          ).map((value) => ({ value, label: t.priorities[value] }))}
          @tl-choose=${(e: CustomEvent<Priority>) => this.#ask({ priority: e.detail })}
        ></tl-choice>
        <tl-choice
          label=${t.maxTubes}
          .value=${String(maxTubes)}
          .options=${['2', '3', '4', '5'].map((value) => ({ value, label: value }))}
          @tl-choose=${(e: CustomEvent<string>) => this.#ask({ maxTubes: Number(e.detail) })}
        ></tl-choice>
        <tl-field
          kind="number"
          label=${t.amount}
          unit="g"
          min="0.1"
          max="10000"
          .value=${num(amount, 0)}
          @tl-change=${(e: CustomEvent<FieldChange>) => {
            if (e.detail.number !== undefined) this.#ask({ amount: e.detail.number });
          }}
        ></tl-field>
      </div>
      <tl-scale-fields class="scale" @tl-scale=${() => this.#ask({})}></tl-scale-fields>
    </section>`;
  }

  #recipes(profile: PaletteProfile) {
    const t = mixingWords();
    const { recipes, wanted, priority } = this.#table.value;
    const best = recipes?.list[0];
    if (this.#match.error) {
      return html`<tl-notice kind="error" live>${this.#match.error.message}</tl-notice>`;
    }
    if (!recipes || !wanted) return nothing;
    return html`<section class="stack">
      <h2>${t.recipes}</h2>
      <p>${recipes.reached ? t.reached : t.notReached}</p>
      ${
        priority !== 'hue' && best && (best.pour ?? best.recipe).deltaE00 > FAR
          ? html`<p>${t.tryHue}</p>
              <div>
                <button type="button" @click=${() => this.#ask({ priority: 'hue' })}>${t.holdHue}</button>
              </div>`
          : nothing
      }
      <tl-recipe-list
        .recipes=${recipes.list}
        .wanted=${wanted.lab}
        .profile=${profile}
        @tl-put=${(e: CustomEvent<Masses>) => changeTable({ masses: e.detail })}
      ></tl-recipe-list>
    </section>`;
  }

  #addition(profile: PaletteProfile) {
    const { wanted, masses } = this.#table.value;
    if (!Object.values(masses).some((g) => g > 0)) return nothing;
    const nudge = html`<tl-nudge-panel .profile=${profile} .masses=${masses}></tl-nudge-panel>`;
    if (!wanted) return nudge;
    return html`${nudge}<tl-addition-panel
        .profile=${profile}
        .wanted=${wanted}
        .masses=${masses}
        .headReady=${this.#bench.value?.instrument.readyToRead === true}
      ></tl-addition-panel>`;
  }

  readonly #toWanted = (): void => {
    const heading = this.renderRoot.querySelector<HTMLElement>('#wanted h2');
    heading?.scrollIntoView();
    heading?.focus();
  };

  #want(wanted: WantedColour | undefined): void {
    changeTable({ wanted, recipes: undefined });
    if (wanted) void this.#find();
    if (this.route?.args[0]) goTo('mixing');
  }

  #ask(change: { priority?: Priority; maxTubes?: number; amount?: number }): void {
    changeTable({ ...change, recipes: undefined });
    if (this.#table.value.wanted) void this.#find();
  }

  async #find(): Promise<void> {
    const { wanted, priority, maxTubes, amount, without } = this.#table.value;
    if (!wanted) return;
    const asked: Wanted = wanted.spectrum ? { spectrum: wanted.spectrum } : { lab: wanted.lab };
    this.share = 0;
    const found = await this.#match.run((signal) =>
      searchBench.run(
        'match',
        {
          wanted: asked,
          options: { priority, maxTubes, grams: amount, without, count: 6 },
          scale: this.#scale.value,
        },
        { signal, onProgress: (share) => (this.share = share) },
      ),
    );
    if (!found) return;
    changeTable({
      recipes: { list: found.found, reached: found.reached },
      masses: found.found[0] ? pouredMasses(found.found[0]) : this.#table.value.masses,
    });
  }
}

define('tl-mixing-screen', TlMixingScreen);
