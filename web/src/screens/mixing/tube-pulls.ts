import { css, html } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Patch } from '../../design/patch.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import { MixTableController, changeTable } from './mix-state.ts';
import './pull-slider.ts';

/** Grams, or parts, at the end of a card. */
const MOST = 50;

/** Every tube with its number and its pull. Parts are by mass, so switching to them changes no mix. */
export class TlTubePulls extends TlElement {
  static override properties = { profile: { attribute: false }, masstones: { attribute: false } };
  declare profile: PaletteProfile;
  declare masstones: ReadonlyMap<string, Patch>;
  readonly #table = new MixTableController(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s2);
      }
      .tube {
        display: grid;
        grid-template-columns: minmax(9rem, 13rem) minmax(0, 1fr);
        gap: 12px;
        align-items: end;
      }
      .top {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2);
        justify-content: space-between;
        align-items: end;
      }
    `,
  ];

  constructor() {
    super();
    this.masstones = new Map();
  }

  override render() {
    const t = mixingWords();
    const { unit, masses } = this.#table.value;
    const total = Object.values(masses).reduce((sum, g) => sum + g, 0);
    return html`<div class="top">
        <tl-choice
          quiet
          label=${t.unit}
          .value=${unit}
          .options=${(['grams', 'parts'] as const).map((value) => ({ value, label: t[value] }))}
          @tl-choose=${(e: CustomEvent<'grams' | 'parts'>) => changeTable({ unit: e.detail })}
        ></tl-choice>
        <span class="row">
          <span>${t.total(`${num(total, 2)} ${unit === 'grams' ? 'g' : t.parts}`)}</span>
          <button
            type="button"
            class="quiet"
            ?disabled=${total === 0}
            @click=${() => changeTable({ masses: {} })}
          >
            ${t.clear}
          </button>
        </span>
      </div>
      ${this.profile.tubes.map((tube) => this.#tube(tube.id, tube.label))}`;
  }

  #tube(id: string, label: string) {
    const t = mixingWords();
    const { unit, masses } = this.#table.value;
    const amount = masses[id] ?? 0;
    const set = (to: number): void => changeTable({ masses: { ...masses, [id]: to } });
    return html`<div class="tube">
      <tl-field
        kind="number"
        label=${label}
        unit=${unit === 'grams' ? 'g' : ''}
        min="0"
        max="10000"
        .value=${amount > 0 ? num(amount, 2) : ''}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          const typed = e.detail.text.trim() === '' ? 0 : e.detail.number;
          if (typed !== undefined) set(typed);
        }}
      ></tl-field>
      <tl-pull-slider
        label=${label}
        .amount=${amount}
        .most=${MOST}
        says="${num(amount, 2)} ${unit === 'grams' ? 'g' : t.parts}"
        .patch=${this.masstones.get(id)}
        @tl-pull=${(e: CustomEvent<number>) => set(e.detail)}
      ></tl-pull-slider>
    </div>`;
  }
}
define('tl-tube-pulls', TlTubePulls);
