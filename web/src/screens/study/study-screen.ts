import { css, html, nothing } from 'lit';
import type { Crop, FamilySettings } from '../../../../src/study/index.ts';
import '../../parts/choice.ts';
import '../../parts/empty.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { studyWords } from '../../text/study.ts';
import './crop-box.ts';
import './crop-numbers.ts';
import './family-list.ts';
import { canvasHeight, familyRows, rowColour } from './family-rows.ts';
import './paint-list.ts';
import './study-picture.ts';
import './study-settings.ts';
import './study-sheet.ts';
import { type StudyTable, changeStudy } from './study-state.ts';
import { StudyWork } from './study-work.ts';

/** A reference as families with recipes: `#/study`, and `#/study/sheet` to print. */
export class TlStudyScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    refusal: { state: true },
  };
  declare route: Route | undefined;
  declare refusal: string;
  readonly #work = new StudyWork(this);

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
      .wait {
        min-block-size: 4.5rem;
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.refusal = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('paste', this.#pasted);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('paste', this.#pasted);
  }

  override render() {
    const t = studyWords();
    const { study, profile } = this.#work;
    if (this.route?.args[0] === 'sheet' && study.families) {
      return html`<tl-study-sheet
        .study=${study}
        .profile=${profile}
        .resolution=${this.#work.resolution}
      ></tl-study-sheet>`;
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
    const work = this.#work;
    const { profile } = work;
    const rows = familyRows(study);
    const crop = (e: CustomEvent<Crop>): void => work.settle({ crop: e.detail });
    return html`<div class="two">
        <div>
          <h2>${t.reference}</h2>
          <tl-crop-box .picture=${study.picture} .crop=${study.crop} @tl-crop=${crop}></tl-crop-box>
          <tl-crop-numbers .picture=${study.picture} .crop=${study.crop} @tl-crop=${crop}></tl-crop-numbers>
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
          work.settle({ settings: { ...study.settings, ...e.detail } })}
        @tl-tubes=${(e: CustomEvent<number>) => work.atMost(e.detail)}
      ></tl-study-settings>
      <div class="wait">
        ${work.finding ? html`<tl-progress label=${t.finding} .share=${work.share}></tl-progress>` : nothing}
        ${
          work.noPalette
            ? html`<tl-notice kind="warning">${t.noPalette}</tl-notice>`
            : html`<p>${t.pictureNote}</p>`
        }
      </div>
      ${work.errors.map((sentence) => html`<tl-notice kind="error" live>${sentence}</tl-notice>`)}
      ${
        rows.length > 0
          ? html`<section class="stack">
                <h2>${t.list}</h2>
                <tl-family-list
                  .rows=${rows}
                  .profile=${profile}
                  .resolution=${work.resolution}
                ></tl-family-list>
              </section>
              <tl-paint-list .rows=${rows} .profile=${profile}></tl-paint-list>`
          : nothing
      }`;
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
      await this.#work.take(file);
    } catch {
      this.refusal = studyWords().bad(file.name);
    }
  }
}

define('tl-study-screen', TlStudyScreen);
