import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Patch } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/empty.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import '../../parts/sheet-notes.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { BenchState } from '../../state/bench-state.ts';
import { RemoteController } from '../../state/remote.ts';
import { ScaleController } from '../../state/scale.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';
import { sheetWords } from '../../text/sheets.ts';
import type { LimitsAnswer, OneMoreAnswer, ValueStringAnswer } from '../../workers/limits-jobs.ts';
import { PaletteController, quickBench, searchBench } from '../../workers/palette-controller.ts';
import type { HighlightsAnswer } from '../../workers/parts-jobs.ts';
import '../mixing/scale-fields.ts';
import './inside-panel.ts';
import { limitsCharts } from './limits-view.ts';
import { oneMoreView, tubesInUse } from './tubes-view.ts';
import { STRING_CHOICE, type StringChoice, stringOptions } from './string-settings.ts';
import './value-string-view.ts';

/** What was chosen last; it stays while other screens are open. */
const kept: { without: readonly string[]; string: StringChoice } = { without: [], string: STRING_CHOICE };

/** What a choice of tubes can reach: `#/limits`, and `#/limits/string` to print. */
export class TlLimitsScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    without: { state: true },
    choice: { state: true },
    share: { state: true },
  };
  declare route: Route | undefined;
  declare without: readonly string[];
  declare choice: StringChoice;
  declare share: number;
  readonly #palette = new PaletteController(this, (palette) => {
    if (palette.status === 'open') void this.#all(palette.profile);
  });
  readonly #limits = new RemoteController<LimitsAnswer | undefined>(this);
  readonly #more = new RemoteController<OneMoreAnswer | undefined>(this);
  readonly #string = new RemoteController<ValueStringAnswer>(this);
  readonly #highlights = new RemoteController<HighlightsAnswer>(this);
  readonly #bench = new BenchState(this);
  readonly #scale = new ScaleController(this);
  readonly #stones = new RemoteController<ReadonlyMap<string, Patch>>(this);

  static override styles = [
    TlElement.styles,
    css`
      .tubes {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--s3);
      }
      label {
        display: flex;
        gap: 10px;
        align-items: center;
        min-block-size: var(--target);
      }
      input {
        inline-size: 24px;
        block-size: 24px;
        accent-color: #000;
        flex: none;
      }
      fieldset {
        border: 0;
        padding: 0;
        margin: 0;
        min-inline-size: 0;
      }
      legend {
        padding: 0;
        font-weight: 650;
      }
      .scale {
        max-inline-size: 32rem;
      }
      /* As high as the next step it stands in for. */
      .wait {
        display: flex;
        gap: var(--s2);
        align-items: end;
        min-block-size: 84px;
      }
      .wait tl-progress {
        flex: 1;
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.without = kept.without;
    this.choice = kept.string;
    this.share = 0;
  }

  async #all(profile: PaletteProfile): Promise<void> {
    const known = new Set(profile.tubes.map((tube) => tube.id));
    this.without = this.without.filter((id) => known.has(id));
    if (!known.has(this.choice.tube)) {
      this.choice = {
        ...this.choice,
        tube: profile.tubes.find((tube) => tube.id !== profile.white)?.id ?? '',
      };
    }
    void this.#stones.run(async (signal) => {
      const made = await Promise.all(
        profile.tubes.map(async ({ id }) => {
          const { reflectance } = await quickBench.run('predict', { masses: { [id]: 1 } }, { signal });
          return [id, patchOfReflectance(reflectance)] as const;
        }),
      );
      return new Map(made);
    });
    await this.#round(profile);
  }

  #chosen: readonly string[] = [];

  /** Ids in use; the same array while the choice is the same. */
  #only(profile: PaletteProfile): readonly string[] {
    const now = profile.tubes.map((tube) => tube.id).filter((id) => !this.without.includes(id));
    if (JSON.stringify(now) !== JSON.stringify(this.#chosen)) this.#chosen = now;
    return this.#chosen;
  }

  async #round(profile: PaletteProfile): Promise<void> {
    const only = this.#only(profile);
    this.share = 0;
    if (this.route?.args[0] !== 'string') {
      const found = await this.#limits.run(async (signal) => {
        const answer = await searchBench.run(
          'limits',
          { only },
          { signal, onProgress: (share) => (this.share = share) },
        );
        await limitsCharts;
        return answer;
      });
      if (!found) return;
    }
    await this.#lay(profile);
    if (this.without.length === 0) this.#more.set(undefined);
    else {
      await this.#more.run((signal) => searchBench.run('oneMore', { chosen: only }, { signal }));
    }
  }

  async #lay(profile: PaletteProfile): Promise<void> {
    const only = this.#only(profile);
    await this.#string.run((signal) =>
      searchBench.run(
        'valueString',
        { options: stringOptions(this.choice, only, this.#scale.value) },
        { signal },
      ),
    );
    await this.#highlights.run((signal) =>
      searchBench.run('highlights', { grams: this.choice.grams, scale: this.#scale.value, only }, { signal }),
    );
  }

  override updated(changed: Map<string, unknown>): void {
    const palette = this.#palette.value;
    if (changed.has('route') && palette.status === 'open' && this.route?.args[0] !== 'string') {
      if (!this.#limits.value && !this.#limits.pending) void this.#round(palette.profile);
    }
  }

  override render() {
    const t = limitsWords();
    const palette = this.#palette.value;
    if (palette.status === 'none') {
      return html`<tl-page heading=${t.title} lead=${t.lead}>
        <tl-next slot="next" label=${t.toRack} href=${linkTo('rack')}></tl-next>
        <tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>
      </tl-page>`;
    }
    if (palette.status === 'error') {
      return html`<tl-page heading=${t.title}
        ><tl-notice kind="error" live>${palette.error.message}</tl-notice></tl-page
      >`;
    }
    if (palette.status === 'pending') {
      return html`<tl-page heading=${t.title} lead=${t.lead}
        ><tl-progress label=${t.working}></tl-progress
      ></tl-page>`;
    }
    const { profile } = palette;
    if (this.route?.args[0] === 'string') return this.#paper(profile);
    // What follows the limits waits for them: they are long, and would push it away.
    const first = this.#limits.pending && !this.#limits.value;
    return html`<tl-page
      ?waiting=${first}
      heading=${t.title}
      lead=${t.lead}
      .terms=${['limits', 'value', 'lean', 'chroma', 'valueString', 'masstone']}
    >
      <div slot="next">${this.#next(profile)}</div>
      ${tubesInUse(profile, this.without, (id, on) => this.#use(profile, id, on))}
      ${this.#limits.error ? html`<tl-notice kind="error" live>${this.#limits.error.message}</tl-notice>` : nothing}
      ${
        this.#limits.value
          ? html`<tl-limits-view
              .profile=${profile}
              .only=${this.#only(profile)}
              .answer=${this.#limits.value}
              .masstones=${this.#stones.value ?? new Map()}
            ></tl-limits-view>`
          : nothing
      }
      ${first ? nothing : this.#rest(profile)}
    </tl-page>`;
  }

  #rest(profile: PaletteProfile) {
    return html`${oneMoreView(profile, this.#more.value)}
      <tl-inside-panel
        .profile=${profile}
        .only=${this.#only(profile)}
        .headReady=${this.#bench.value?.instrument.readyToRead === true}
      ></tl-inside-panel>
      ${this.#stringPart(profile)}`;
  }

  #next(profile: PaletteProfile) {
    const t = limitsWords();
    if (this.#limits.pending) {
      return html`<div class="wait">
        <tl-progress label=${t.working} .share=${this.share}></tl-progress>
        <button type="button" @click=${() => this.#limits.set(undefined)}>${t.stop}</button>
      </div>`;
    }
    if (!this.#limits.value) {
      return html`<tl-next label=${t.again} @click=${() => void this.#round(profile)}></tl-next>`;
    }
    const best = this.#more.value?.gains[0];
    if (best) {
      return html`<tl-next
        label=${t.gap(this.#label(profile, best.tube), `${num(100 * best.gain, 0)} %`)}
        hint=${t.gapHint}
        @click=${() => this.#use(profile, best.tube, true)}
      ></tl-next>`;
    }
    return html`<tl-next
      label=${t.nextString}
      hint=${t.nextStringHint}
      href=${linkTo('limits', 'string')}
    ></tl-next>`;
  }

  #use(profile: PaletteProfile, id: string, on: boolean): void {
    this.without = on ? this.without.filter((other) => other !== id) : [...this.without, id];
    kept.without = this.without;
    void this.#round(profile);
  }

  #stringPart(profile: PaletteProfile) {
    const t = limitsWords();
    return html`<section class="stack">
      <h2>${t.string}</h2>
      <p>${t.stringLead}</p>
      <tl-scale-fields class="scale no-print" @tl-scale=${() => void this.#lay(profile)}></tl-scale-fields>
      <tl-string-settings
        class="no-print"
        .choice=${this.choice}
        .profile=${profile}
        @tl-string=${(e: CustomEvent<StringChoice>) => {
          this.choice = e.detail;
          kept.string = e.detail;
          void this.#lay(profile);
        }}
      ></tl-string-settings>
      ${this.#string.error ? html`<tl-notice kind="error" live>${this.#string.error.message}</tl-notice>` : nothing}
      ${this.#string.value ? this.#laid(profile, this.#string.value) : nothing}
    </section>`;
  }

  #paper(profile: PaletteProfile) {
    const t = limitsWords();
    return html`<tl-page heading="${t.string}: ${t.ways[this.choice.way]}" lead=${sheetWords().stringIs}>
      <tl-next slot="next" label=${t.print} @click=${() => window.print()}></tl-next>
      <a class="no-print" href=${linkTo('limits')}>${t.back}</a>
      <tl-sheet-notes .profile=${profile}></tl-sheet-notes>
      ${
        this.#string.value
          ? this.#laid(profile, this.#string.value)
          : html`<tl-progress label=${t.working}></tl-progress>`
      }
    </tl-page>`;
  }

  #laid(profile: PaletteProfile, string: ValueStringAnswer) {
    // Where no tube warms the white there is nothing to show, and nothing wrong.
    const found = this.#highlights.error ? undefined : this.#highlights.value;
    return html`<tl-value-string
      .string=${string}
      .profile=${profile}
      .highlights=${found ?? []}
    ></tl-value-string>`;
  }

  #label(profile: PaletteProfile, id: string): string {
    return profile.tubes.find((tube) => tube.id === id)?.label ?? id;
  }
}
define('tl-limits-screen', TlLimitsScreen);
