import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Masses } from '../../../../src/mix/index.ts';
import type { Patch } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/empty.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, goTo, linkTo } from '../../shell/route.ts';
import { BenchState } from '../../state/bench-state.ts';
import { ScaleController } from '../../state/scale.ts';
import { waitingPage } from '../../shell/waiting-page.ts';
import { RemoteController } from '../../state/remote.ts';
import { mixingWords } from '../../text/mixing.ts';
import { said } from '../../text/said.ts';
import type { MatchAnswer } from '../../workers/match-job.ts';
import { PaletteController, quickBench, searchBench } from '../../workers/palette-controller.ts';
import type { MixFilmsAnswer } from '../../workers/mix-films-job.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import { cardContent, cardLink } from './card-link.ts';
import { groundOfLay, groundPatch } from './film-panel.ts';
import { type Lay, MixTableController, type WantedColour, asWanted, changeTable } from './mix-state.ts';
import './mud-panel.ts';
import './nudge-panel.ts';
import './parts-panel.ts';
import { type LaidPile, pileView } from './pile-view.ts';
import './recipe-card.ts';
import { asMade } from './recipe-list.ts';
import { recipesView } from './recipes-view.ts';
import './addition-panel.ts';
import './tube-pulls.ts';
import { type Asked, wantedView } from './wanted-view.ts';

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
  readonly #films = new RemoteController<MixFilmsAnswer>(this);
  #shown: Partial<{ masses: Masses; ground: Lay['ground'] }> = {};

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
    const { masses, lay } = this.#table.value;
    changeTable({ masses: Object.fromEntries(Object.entries(masses).filter(([id]) => known.has(id))) });
    if (typeof lay.ground === 'object' && !known.has(lay.ground.tube)) {
      changeTable({ lay: { ...lay, ground: 'card' } });
    }
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
    const { masses, lay } = this.#table.value;
    if (this.#palette.value.status !== 'open') return;
    const used = Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0));
    const any = Object.keys(used).length > 0;
    if (masses !== this.#shown.masses && any) {
      void this.#mix.run((signal) => quickBench.run('predict', { masses: used }, { signal }));
    }
    if ((masses !== this.#shown.masses || lay.ground !== this.#shown.ground) && any) {
      const ground = groundOfLay(lay);
      void this.#films.run((signal) =>
        quickBench.run('mixFilms', { masses: used, ...(ground ? { ground } : {}) }, { signal }),
      );
    }
    this.#shown = { masses, ground: lay.ground };
  }

  override render() {
    const t = mixingWords();
    const palette = this.#palette.value;
    if (palette.status === 'pending' || palette.status === 'error') return waitingPage(palette, t);
    if (palette.status === 'none') {
      return html`<tl-page heading=${t.title} lead=${t.lead}>
        <tl-next slot="next" label=${t.toRack} href=${linkTo('rack')}></tl-next>
        <tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>
      </tl-page>`;
    }
    const { profile } = palette;
    const { wanted, masses } = this.#table.value;
    const onTable = Object.values(masses).some((g) => g > 0);
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
          ${pileView(wanted, onTable ? this.#mix.value : undefined, onTable ? this.#laidPile() : undefined)}
        </div>
        <section class="stack" aria-label=${t.tubes}>
          <tl-tube-pulls .profile=${profile} .masstones=${this.#stones.value ?? new Map()}></tl-tube-pulls>
        </section>
      </div>
      ${wantedView(this.#table.value, {
        headReady: this.#bench.value?.instrument.readyToRead === true,
        want: (wanted_) => this.#want(wanted_),
        ask: (change) => this.#ask(change),
      })}
      ${
        this.#match.error
          ? html`<tl-notice kind="error" live>${said(this.#match.error.message)}</tl-notice>`
          : recipesView(profile, this.#table.value, () => this.#ask({ priority: 'hue' }))
      }
      ${this.#laid(profile)} ${this.#addition(profile)}
      <tl-mud-panel .profile=${profile}></tl-mud-panel>
    </tl-page>`;
  }

  #next() {
    const t = mixingWords();
    const { wanted, priority, recipes, masses, preTints } = this.#table.value;
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
        href=${cardLink(masses, wanted.lab, preTints)}
      ></tl-next>`;
    }
    return html`<tl-next
      label=${t.find}
      hint=${t.findHint(t.priorities[priority])}
      @click=${() => void this.#find()}
    ></tl-next>`;
  }

  #laidPile(): LaidPile | undefined {
    const { lay } = this.#table.value;
    const film = this.#films.value?.find(({ X }) => X === lay.X);
    return film && { film, ground: groundPatch(lay, this.#stones.value ?? new Map()) };
  }

  #laid(profile: PaletteProfile) {
    const { masses, wanted } = this.#table.value;
    const [thick, films] = [this.#mix.value, this.#films.value];
    if (!thick || !films || !Object.values(masses).some((g) => g > 0)) return nothing;
    return html`<tl-film-panel
      .profile=${profile}
      .masstones=${this.#stones.value ?? new Map()}
      .films=${films}
      .thick=${thick}
      .needsSpectrum=${wanted !== undefined && wanted.spectrum === undefined}
    ></tl-film-panel>`;
  }

  #addition(profile: PaletteProfile) {
    const { wanted, masses } = this.#table.value;
    const nudge = Object.values(masses).some((g) => g > 0)
      ? html`<tl-parts-panel .profile=${profile} .masses=${masses} .wanted=${wanted}></tl-parts-panel>
          <tl-nudge-panel .profile=${profile} .masses=${masses}></tl-nudge-panel>`
      : nothing;
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

  #ask(change: Asked): void {
    changeTable({ ...change, recipes: undefined });
    if (this.#table.value.wanted) void this.#find();
  }

  async #find(): Promise<void> {
    const { wanted, priority, maxTubes, amount, without } = this.#table.value;
    if (!wanted) return;
    this.share = 0;
    const found = await this.#match.run((signal) =>
      searchBench.run(
        'match',
        {
          wanted: asWanted(wanted),
          options: { priority, maxTubes, grams: amount, without, count: 6 },
          scale: this.#scale.value,
        },
        { signal, onProgress: (share) => (this.share = share) },
      ),
    );
    if (!found) return;
    changeTable({
      recipes: { list: found.found, reached: found.reached },
      ...(found.found[0] ? asMade(found.found[0]) : {}),
    });
  }
}

define('tl-mixing-screen', TlMixingScreen);
