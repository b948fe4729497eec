import { css, html, nothing } from 'lit';
import { patchOfReflectance } from '../../design/patch.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange, FieldOption } from '../../parts/field.ts';
import '../../parts/figures.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { constantsWords } from '../../text/constants.ts';
import { num } from '../../text/numbers.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';

/** Thicknesses shown, in units of the white's scattering: from a glaze to a film most paints hide with. */
export const FILMS = [0.1, 0.5, 2, 8] as const;

/** A tube as films over a card, with its hiding, its strength against another tube and its drying shift. */
export class TlTubeFilms extends TlElement {
  static override properties = {
    answer: { attribute: false },
    others: { attribute: false },
    against: {},
    perMicrometre: { type: Number },
  };
  declare answer: FilmsAnswer | undefined;
  declare others: readonly FieldOption[];
  declare against: string;
  /** Scattering of the white per micrometre, where a thickness was measured. */
  declare perMicrometre: number | undefined;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      .films {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(46%, 11rem), 1fr));
        gap: var(--s2);
        --card-ratio: 8 / 5;
      }
      tl-field {
        max-inline-size: 22rem;
      }
    `,
  ];

  constructor() {
    super();
    this.answer = undefined;
    this.others = [];
    this.against = '';
    this.perMicrometre = undefined;
  }

  override render() {
    const t = constantsWords();
    const { answer } = this;
    return html`<div class="films">
        ${
          answer
            ? answer.films.map(
                (film) =>
                  html`<tl-drawdown
                    size="fill"
                    heading="${this.#thickness(film.thickness)}, ${t.contrast(num(film.contrast, 2))}"
                    .patch=${patchOfReflectance(film.overWhite)}
                    .overBlack=${patchOfReflectance(film.overBlack)}
                  ></tl-drawdown>`,
              )
            : FILMS.map((x) => html`<tl-drawdown size="fill" heading=${this.#thickness(x)}></tl-drawdown>`)
        }
      </div>
      ${this.perMicrometre ? nothing : html`<p class="small">${t.filmHow}</p>`}
      <tl-figures .figures=${this.#figures()}></tl-figures>
      ${
        this.others.length > 0
          ? html`<tl-field
              class="no-print"
              label=${t.against}
              .options=${this.others}
              .value=${this.against}
              @tl-change=${(e: CustomEvent<FieldChange>) =>
                this.dispatchEvent(new CustomEvent<string>('tl-against', { detail: e.detail.text }))}
            ></tl-field>`
          : nothing
      }`;
  }

  #thickness(x: number): string {
    const t = constantsWords();
    return this.perMicrometre
      ? t.thicknessMicrometres(num(x / this.perMicrometre, 0))
      : t.thickness(num(x, 1));
  }

  #figures() {
    const t = constantsWords();
    const hiding = this.answer?.hidingAgainstWhite;
    const strength = this.answer?.strengthPercent;
    const against = this.others.find((o) => o.value === this.against)?.label ?? '';
    return [
      ...(hiding
        ? [
            {
              name: t.hiding,
              figure: `${num(hiding.value, 2)} ×`,
              means: t.hidingMeans(
                num(Math.max(0, hiding.value - 2 * hiding.sd), 2),
                num(hiding.value + 2 * hiding.sd, 2),
              ),
            },
          ]
        : []),
      ...(strength
        ? [
            {
              name: t.strength,
              figure: `${num(strength.value, 0)} %`,
              means: t.strengthMeans(against, num(2 * strength.sd, 0)),
            },
          ]
        : []),
      { name: t.drying, figure: t.dryingNone, means: t.dryingHow },
    ];
  }
}
define('tl-tube-films', TlTubeFilms);
