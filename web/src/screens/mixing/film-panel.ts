import { css, html, nothing } from 'lit';
import { flatSpectrum } from '../../../../src/colour/grid.ts';
import type { Ground, MixPrediction } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Patch } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/choice.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { LAMPS, type Lamp, changeSettings, settings } from '../../state/settings.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import { shellWords } from '../../text/shell.ts';
import type { MixFilm, MixFilmsAnswer } from '../../workers/mix-films-job.ts';
import { type Lay, MixTableController, changeTable } from './mix-state.ts';

/** A toned ground: a middle grey of about value 6, as painters tone a canvas. Our choice. */
const TONED = flatSpectrum(0.3);

/** What lies under the pile, as a film's ground; undefined is the card. */
export function groundOfLay({ ground }: Lay): Ground | undefined {
  if (ground === 'card') return undefined;
  return ground === 'toned' ? { reflectance: TONED } : { paint: { [ground.tube]: 1 } };
}

/** What lies under the pile as it is drawn; undefined is the card. */
export function groundPatch({ ground }: Lay, masstones: ReadonlyMap<string, Patch>): Patch | undefined {
  if (ground === 'card') return undefined;
  return ground === 'toned' ? patchOfReflectance(TONED) : masstones.get(ground.tube);
}

/** How the pile is laid and looked at: from undertone to impasto, over a ground, under a lamp. */
export class TlFilmPanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    masstones: { attribute: false },
    films: { attribute: false },
    thick: { attribute: false },
    needsSpectrum: { type: Boolean },
  };
  declare profile: PaletteProfile;
  declare masstones: ReadonlyMap<string, Patch>;
  declare films: MixFilmsAnswer;
  declare thick: MixPrediction;
  /** A colour is wanted that another lamp says nothing about. */
  declare needsSpectrum: boolean;
  readonly #table = new MixTableController(this);

  static override styles = [
    TlElement.styles,
    css`
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s4);
        align-items: end;
      }
      tl-field {
        inline-size: 15rem;
      }
      fieldset {
        border: 0;
        margin: 0;
        padding: 0;
        min-inline-size: 0;
      }
      legend {
        padding: 0;
        font-weight: 650;
        margin-block-end: 4px;
      }
      .films {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(6.5rem, 1fr));
        gap: var(--s2);
        max-inline-size: 52rem;
      }
      label {
        display: grid;
        gap: 4px;
        align-content: start;
        cursor: pointer;
        padding: 6px;
        border: 2px solid transparent;
      }
      label:has(:checked) {
        border-color: currentColor;
      }
      label:has(:focus-visible) {
        outline: 3px solid var(--ink);
        outline-offset: 2px;
      }
      input {
        position: absolute;
        opacity: 0;
        inline-size: 1px;
        block-size: 1px;
      }
      span {
        line-height: 1.2;
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.masstones = new Map();
    this.needsSpectrum = false;
  }

  override render() {
    const t = mixingWords();
    const shell = shellWords();
    const { lay } = this.#table.value;
    const { lamp } = settings();
    const grounds = [
      { value: 'card', label: t.grounds.card },
      { value: 'toned', label: t.grounds.toned },
      ...this.profile.tubes.map((tube) => ({ value: `tube ${tube.id}`, label: t.grounds.tube(tube.label) })),
    ];
    const chosen = typeof lay.ground === 'string' ? lay.ground : `tube ${lay.ground.tube}`;
    return html`<section class="stack">
      <h2>${t.laid}</h2>
      <p>${t.laidHow}</p>
      <div class="asked">
        <tl-field
          label=${t.ground}
          .value=${chosen}
          .options=${grounds}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#over(e.detail.text)}
        ></tl-field>
        <tl-choice
          label=${shell.lamp}
          .options=${LAMPS.map((value) => ({ value, label: shell.lamps[value] }))}
          .value=${lamp}
          @tl-choose=${(e: CustomEvent<Lamp>) => changeSettings({ lamp: e.detail })}
        ></tl-choice>
      </div>
      ${lamp !== 'D65/10deg' && this.needsSpectrum ? html`<p class="small">${t.lampNeedsSpectrum}</p>` : nothing}
      <fieldset>
        <legend>${t.thickness}</legend>
        <div class="films">
          ${this.films.map((film, i) => this.#film(film, i))}
          ${this.#choice('thick', t.impasto, patchOfReflectance(this.thick.reflectance), undefined)}
        </div>
      </fieldset>
    </section>`;
  }

  #film({ X, over, overBlack }: MixFilm, i: number) {
    const t = mixingWords();
    // ISO 6504-3 and ASTM D2805: Y over black divided by Y over white.
    const hides = overBlack && t.hides(num((100 * overBlack.xyz.Y) / over.xyz.Y, 0));
    const film = i === 0 ? t.undertone(num(X, 2)) : t.film(num(X, X < 1 ? 2 : 0));
    const name = hides ? `${film}, ${hides}` : film;
    const black = overBlack && patchOfReflectance(overBlack.reflectance);
    return this.#choice(X, name, patchOfReflectance(over.reflectance), black);
  }

  #choice(X: Lay['X'], name: string, patch: Patch, overBlack: Patch | undefined) {
    const { lay } = this.#table.value;
    return html`<label>
      <input
        type="radio"
        name="film"
        .checked=${lay.X === X}
        @change=${() => changeTable({ lay: { ...lay, X } })}
      />
      <tl-drawdown
        size="fill"
        plain
        aria-hidden="true"
        .patch=${patch}
        .overBlack=${overBlack}
        .ground=${groundPatch(lay, this.masstones)}
      ></tl-drawdown>
      <span>${name}</span>
    </label>`;
  }

  #over(text: string): void {
    const { lay } = this.#table.value;
    const ground: Lay['ground'] =
      text === 'card' || text === 'toned' ? text : { tube: text.slice('tube '.length) };
    // A ground is only seen through a film.
    changeTable({ lay: { ground, X: lay.X === 'thick' && ground !== 'card' ? 1 : lay.X } });
  }
}
define('tl-film-panel', TlFilmPanel);
