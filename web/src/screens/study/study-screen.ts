import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { type Crop, type FamilySettings, cropped } from '../../../../src/study/index.ts';
import '../../parts/choice.ts';
import '../../parts/empty.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { RemoteController } from '../../state/remote.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { PaletteController, quickBench, searchBench } from '../../workers/palette-controller.ts';
import type { FamiliesAnswer, StudyRecipesAnswer } from '../../workers/study-jobs.ts';
import './crop-box.ts';
import { fitted, wholeOf } from './crop-moves.ts';
import './family-list.ts';
import { canvasHeight, familyRows, rowColour } from './family-rows.ts';
import { openPicture } from './open-picture.ts';
import './paint-list.ts';
import './study-picture.ts';
import './study-settings.ts';
import './study-sheet.ts';
import { type StudyTable, StudyTableController, changeStudy } from './study-state.ts';

/** A reference as families with recipes: `#/study`, and `#/study/sheet` to print. */
export class TlStudyScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    refusal: { state: true },
    share: { state: true },
  };
  declare route: Route | undefined;
  declare refusal: string;
  declare share: number;
  readonly #study = new StudyTableController(this);
  readonly #palette = new PaletteController(this, () => {
    if (this.#study.value.families) void this.#findRecipes();
  });
  readonly #families = new RemoteController<FamiliesAnswer>(this);
  readonly #recipes = new RemoteController<StudyRecipesAnswer>(this);
  #wait: ReturnType<typeof setTimeout> | undefined;

  static override styles = [
    TlElement.styles,
    css`
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 24rem), 1fr));
        gap: var(--s3);
        align-items: start;
      }
      .two > * {
        display: grid;
        gap: 8px;
      }
      .open {
        display: grid;
        gap: 4px;
        font-weight: 650;
        max-inline-size: 30rem;
      }
      .open input {
        border: var(--edge);
        background: var(--raised);
        padding: 10px;
        min-block-size: var(--target);
        inline-size: 100%;
        font-weight: 400;
      }
      input::file-selector-button {
        font: inherit;
        color: inherit;
        background: transparent;
        border: var(--edge);
        padding: 4px 12px;
        margin-inline-end: 12px;
      }
      .numbers {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr));
        gap: var(--s2);
      }
      .wait {
        min-block-size: 4.5rem;
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.refusal = '';
    this.share = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('paste', this.#pasted);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('paste', this.#pasted);
    clearTimeout(this.#wait);
  }

  get #profile(): PaletteProfile | undefined {
    const palette = this.#palette.value;
    return palette.status === 'open' ? palette.profile : undefined;
  }

  override render() {
    const t = studyWords();
    const study = this.#study.value;
    if (this.route?.args[0] === 'sheet' && study.families) {
      return html`<tl-study-sheet .study=${study} .profile=${this.#profile}></tl-study-sheet>`;
    }
    return html`<tl-page
      heading=${t.title}
      lead=${t.lead}
      .terms=${['family', 'value', 'lean', 'recipe', 'limits']}
    >
      ${
        study.families
          ? html`<tl-next
              slot="next"
              label=${t.sheet}
              hint=${t.sheetHint}
              href=${linkTo('study', 'sheet')}
            ></tl-next>`
          : html`<tl-next
              slot="next"
              label=${t.choose}
              hint=${t.chooseHint}
              @click=${this.#choose}
            ></tl-next>`
      }
      ${study.picture ? nothing : html`<tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>`}
      <label class="open"
        >${study.picture ? t.another : t.file}
        <input type="file" accept="image/*" @change=${this.#chosen} />
      </label>
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${study.picture && study.crop ? this.#open(study) : nothing}
    </tl-page>`;
  }

  #open(study: StudyTable) {
    const t = studyWords();
    const rows = familyRows(study, this.#profile);
    return html`<div class="two">
        <div>
          <h2>${t.reference}</h2>
          <tl-crop-box
            .picture=${study.picture}
            .crop=${study.crop}
            @tl-crop=${(e: CustomEvent<Crop>) => this.#crop(e.detail)}
          ></tl-crop-box>
          ${this.#cropNumbers(study)}
        </div>
        <div>
          <h2>${t.study}</h2>
          ${
            study.families
              ? html`<tl-study-picture
                  .families=${study.families}
                  .colours=${rows.map((row) => rowColour(row, study.view))}
                  .dark=${rows.map((row) => (row.mix?.lab ?? row.family.lab).L < 55)}
                ></tl-study-picture>`
              : html`<tl-progress label=${t.working}></tl-progress>`
          }
          <tl-choice
            label=${t.view}
            .value=${study.view}
            .options=${(['paint', 'picture', 'value'] as const).map((value) => ({ value, label: t.views[value] }))}
            @tl-choose=${(e: CustomEvent<StudyTable['view']>) => changeStudy({ view: e.detail })}
          ></tl-choice>
        </div>
      </div>
      <tl-study-settings
        .study=${study}
        .canvasHeight=${canvasHeight(study)}
        @tl-settings=${(e: CustomEvent<Partial<FamilySettings>>) =>
          this.#settle({ settings: { ...study.settings, ...e.detail } })}
        @tl-tubes=${(e: CustomEvent<number>) => {
          changeStudy({ maxTubes: e.detail });
          void this.#findRecipes();
        }}
      ></tl-study-settings>
      <div class="wait">
        ${this.#recipes.pending ? html`<tl-progress label=${t.finding} .share=${this.share}></tl-progress>` : nothing}
        ${
          this.#palette.value.status === 'none'
            ? html`<tl-notice kind="warning">${t.noPalette}</tl-notice>`
            : html`<p>${t.pictureNote}</p>`
        }
      </div>
      ${[this.#families.error, this.#recipes.error].map((error) =>
        error ? html`<tl-notice kind="error" live>${error.message}</tl-notice>` : nothing,
      )}
      ${
        rows.length > 0
          ? html`<section class="stack">
                <h2>${t.list}</h2>
                <tl-family-list .rows=${rows} .profile=${this.#profile}></tl-family-list>
              </section>
              <tl-paint-list .rows=${rows} .profile=${this.#profile}></tl-paint-list>`
          : nothing
      }`;
  }

  #cropNumbers({ crop, picture }: StudyTable) {
    const t = studyWords();
    const field = (label: string, key: keyof Crop, most: number) =>
      html`<tl-field
        kind="number"
        label=${label}
        unit="px"
        min="0"
        max=${most}
        .value=${num(crop![key], 0)}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          if (e.detail.number !== undefined)
            this.#crop(fitted({ ...crop!, [key]: e.detail.number }, picture!));
        }}
      ></tl-field>`;
    return html`<details>
      <summary>
        ${t.crop}: ${t.cropSays(num(crop!.width, 0), num(crop!.height, 0), num(crop!.x, 0), num(crop!.y, 0))}
      </summary>
      <div class="numbers">
        ${field(t.left, 'x', picture!.width)} ${field(t.top, 'y', picture!.height)}
        ${field(t.width, 'width', picture!.width)} ${field(t.height, 'height', picture!.height)}
      </div>
      <button type="button" class="quiet" @click=${() => this.#crop(wholeOf(picture!))}>${t.whole}</button>
    </details>`;
  }

  readonly #choose = (): void => this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();

  readonly #chosen = (event: Event): void => {
    const file = (event.target as HTMLInputElement).files?.[0];
    if (file) void this.#take(file);
  };

  readonly #pasted = (event: ClipboardEvent): void => {
    const file = [...(event.clipboardData?.files ?? [])].find((f) => f.type.startsWith('image/'));
    if (file) void this.#take(file);
  };

  async #take(file: File): Promise<void> {
    this.refusal = '';
    try {
      const picture = await openPicture(file);
      this.#study.value.picture?.bitmap.close();
      changeStudy({ picture, families: undefined, recipes: undefined });
      this.#settle({ crop: wholeOf(picture) }, 0);
    } catch {
      this.refusal = studyWords().bad(file.name);
    }
  }

  #crop(crop: Crop): void {
    this.#settle({ crop });
  }

  /** Waits until the hand rests, then parts the picture. */
  #settle(change: Partial<StudyTable>, after = 180): void {
    changeStudy(change);
    clearTimeout(this.#wait);
    this.#wait = setTimeout(() => void this.#part(), after);
  }

  async #part(): Promise<void> {
    const { picture, crop, settings } = this.#study.value;
    if (!picture || !crop) return;
    // Only the cropped pixels travel to the worker.
    const { width, height, rgba } = cropped(picture, crop);
    const families = await this.#families.run((signal) =>
      quickBench.run(
        'families',
        { picture: { width, height, rgba }, crop: { x: 0, y: 0, width, height }, settings },
        { signal },
      ),
    );
    if (!families) return;
    changeStudy({ families, recipes: undefined });
    await this.#findRecipes();
  }

  async #findRecipes(): Promise<void> {
    const { families, maxTubes } = this.#study.value;
    if (!families || !this.#profile) return;
    this.share = 0;
    const recipes = await this.#recipes.run((signal) =>
      searchBench.run(
        'studyRecipes',
        { families: families.families, options: { maxTubes } },
        { signal, onProgress: (share) => (this.share = share) },
      ),
    );
    if (recipes) changeStudy({ recipes });
  }
}

define('tl-study-screen', TlStudyScreen);
