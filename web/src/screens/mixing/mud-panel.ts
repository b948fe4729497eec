import { css, html, nothing } from 'lit';
import type { MudBetween } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { onThisScreen, patchName } from '../../design/patch.ts';
import { setStyle } from '../../design/set-style.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import { said } from '../../text/said.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import { labelIn } from './pour-words.ts';

/** What becomes of chroma between two tubes: a strip from one to the other, and a sentence. */
export class TlMudPanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    one: { state: true },
    two: { state: true },
  };
  declare profile: PaletteProfile;
  declare one: string;
  declare two: string;
  readonly #found = new RemoteController<MudBetween | undefined>(this);

  static override styles = [
    TlElement.styles,
    css`
      .asked {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 13rem), 1fr));
        gap: var(--s2);
        max-inline-size: 36rem;
      }
      ol {
        list-style: none;
        display: flex;
        padding: 0;
        max-inline-size: none;
      }
      li {
        flex: 1;
        min-inline-size: 0;
        text-align: center;
        font-size: var(--t-small);
      }
      li div {
        block-size: 5rem;
        margin-block-end: 4px;
      }
      .ends {
        display: flex;
        justify-content: space-between;
        gap: var(--s2);
        max-inline-size: none;
      }
    `,
  ];

  constructor() {
    super();
    this.one = '';
    this.two = '';
  }

  override willUpdate(): void {
    const ids = this.profile.tubes.filter((tube) => tube.id !== this.profile.white).map((tube) => tube.id);
    if (ids.includes(this.one) && ids.includes(this.two)) return;
    [this.one = '', this.two = ''] = ids;
    void this.#look();
  }

  override render() {
    const t = mixingWords();
    if (this.profile.tubes.length < 3) return nothing;
    const options = this.profile.tubes.map((tube) => ({ value: tube.id, label: tube.label }));
    return html`<section class="stack">
      <h2>${t.mud}</h2>
      <div class="asked">
        ${(['one', 'two'] as const).map(
          (key) =>
            html`<tl-field
              label=${t.mudTubes[key]}
              .value=${this[key]}
              .options=${options}
              @tl-change=${(e: CustomEvent<FieldChange>) => {
                this[key] = e.detail.text;
                void this.#look();
              }}
            ></tl-field>`,
        )}
      </div>
      ${this.#found.error ? html`<tl-notice kind="error" live>${said(this.#found.error.message)}</tl-notice>` : nothing}
      ${this.#found.value ? this.#strip(this.#found.value) : nothing}
    </section>`;
  }

  #strip({ points, sentence }: MudBetween) {
    const t = mixingWords();
    return html`<p aria-live="polite">${said(sentence)}</p>
      <div>
        <ol aria-label=${t.mudStrip}>
          ${points.map(
            (p) =>
              html`<li>
                <div
                  role="img"
                  aria-label=${patchName({ lab: p.lab, value: p.value })}
                  ${setStyle({ 'background-color': onThisScreen(p.lab).css })}
                ></div>
                ${num(p.chroma, 0)}
              </li>`,
          )}
        </ol>
        <p class="ends small">
          <span>${labelIn(this.profile, this.one)}</span><span>${t.chroma}</span
          ><span>${labelIn(this.profile, this.two)}</span>
        </p>
      </div>`;
  }

  async #look(): Promise<void> {
    const { one, two } = this;
    if (!one || !two) return;
    await this.#found.run((signal) => searchBench.run('mud', { one, two }, { signal }));
  }
}
define('tl-mud-panel', TlMudPanel);
