import { css, html, nothing } from 'lit';
import type { Palette } from '../../../../server/api/palettes.ts';
import { call } from '../../api/call.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { refreshBench } from '../../state/bench-state.ts';
import { rackWords } from '../../text/rack.ts';

/** Which palette is on the table, where there is more than one; and whether its paints are invented. */
export class TlPaletteChoice extends TlElement {
  static override properties = {
    palettes: { attribute: false },
    naming: { state: true },
    refusal: { state: true },
  };
  declare palettes: readonly Palette[];
  declare naming: string | undefined;
  declare refusal: string;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s2);
      }
      tl-field {
        inline-size: min(100%, 22rem);
      }
      .row {
        align-items: end;
      }
      .demo {
        display: grid;
        align-content: center;
        min-block-size: var(--target);
        border: var(--rule);
        padding: 2px 12px;
        line-height: 1.25;
      }
    `,
  ];

  constructor() {
    super();
    this.palettes = [];
    this.naming = undefined;
    this.refusal = '';
  }

  override render() {
    const t = rackWords();
    const current = this.palettes.find((p) => p.current);
    if (this.palettes.length === 0) return nothing;
    return html`
      <div class="row">
        ${current?.demo ? html`<p class="demo"><b>${t.demoMark}</b>${t.demoNote}</p>` : nothing}
        ${
          this.palettes.length > 1
            ? html`<tl-field
                label=${t.palette}
                .value=${current?.id ?? ''}
                .options=${this.palettes.map((p) => ({ value: p.id, label: p.title }))}
                @tl-change=${(e: CustomEvent<FieldChange>) =>
                  this.#do(() => call('makePaletteCurrent', { params: { paletteId: e.detail.text } }))}
              ></tl-field>`
            : nothing
        }
        ${
          this.naming === undefined
            ? html`<button type="button" class="quiet" @click=${this.#name}>${t.newPalette}</button>`
            : html`<tl-field
                  label=${t.paletteName}
                  .value=${this.naming}
                  @tl-change=${(e: CustomEvent<FieldChange>) => (this.naming = e.detail.text)}
                ></tl-field>
                <button type="button" @click=${this.#begin}>${t.begin}</button>`
        }
      </div>
      ${current?.note && !current.demo ? html`<p>${current.note}</p>` : nothing}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
    `;
  }

  readonly #name = async (): Promise<void> => {
    this.naming = '';
    await this.updateComplete;
    [...this.renderRoot.querySelectorAll<HTMLElement>('tl-field')].at(-1)?.focus();
  };

  readonly #begin = (): void => {
    const title = this.naming?.trim() || rackWords().paletteTitle;
    void this.#do(() => call('createPalette', { body: { title } })).then(() => (this.naming = undefined));
  };

  async #do(work: () => Promise<unknown>): Promise<void> {
    this.refusal = '';
    try {
      await work();
      await refreshBench();
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  }
}
define('tl-palette-choice', TlPaletteChoice);
