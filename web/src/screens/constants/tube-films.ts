import { css, html, nothing } from 'lit';
import type { TubeFacts } from '../../../../server/api/tube-facts.ts';
import { patchName, patchOfLab } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import { setStyle } from '../../design/set-style.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange, FieldOption } from '../../parts/field.ts';
import '../../parts/figures.ts';
import type { Figure } from '../../parts/figures.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { constantsWords } from '../../text/constants.ts';
import { num } from '../../text/numbers.ts';
import { tubeFactsWords } from '../../text/tube-facts.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';

/** Thicknesses shown, in units of the white's scattering: from a glaze to a film most paints hide with. */
export const FILMS = [0.1, 0.5, 2, 8] as const;

/** A tube as films over a card, with its hiding, undertone and strength, each with what it is sure to. */
export class TlTubeFilms extends TlElement {
  static override properties = {
    answer: { attribute: false },
    facts: { attribute: false },
    others: { attribute: false },
    against: {},
    perMicrometre: { type: Number },
  };
  declare answer: FilmsAnswer | undefined;
  declare facts: TubeFacts | undefined;
  declare others: readonly FieldOption[];
  declare against: string;
  /** Scattering of the white per micrometre, where a thickness was measured. */
  declare perMicrometre: number | undefined;
  /** Of the figures when they last stood, px. */
  #height = 0;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      .films {
        display: grid;
        grid-template-columns: repeat(4, minmax(0, 1fr));
        gap: var(--s2);
        --card-ratio: 8 / 5;
      }
      /* Four: in one row or in two. */
      @media (max-width: 60rem) {
        .films {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
      }
      @media print {
        :host {
          display: block;
        }
        .films {
          grid-template-columns: repeat(4, minmax(0, 1fr));
          margin-block-end: 4mm;
        }
      }
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s3);
      }
      tl-field {
        inline-size: 22rem;
        max-inline-size: 100%;
      }
    `,
  ];

  constructor() {
    super();
    this.answer = undefined;
    this.facts = undefined;
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
      ${this.perMicrometre ? nothing : html`<p class="small">${t.filmHow}</p>`} ${this.#figuresInPlace()}
      ${(answer && this.facts) || this.#height > 0 ? this.#asked() : nothing}`;
  }

  /** While another tube's figures are on their way, those just seen keep their place. */
  #figuresInPlace() {
    const figures = this.answer || this.#height > 0 ? this.#figures() : [];
    const height = figures.length > 0 ? undefined : `${this.#height}px`;
    return html`<div class="figures" ${setStyle({ 'min-block-size': height })}>
      <tl-figures .figures=${figures}></tl-figures>
    </div>`;
  }

  override updated(): void {
    if (!this.facts) return;
    const figures = this.renderRoot.querySelector<HTMLElement>('.figures');
    // Their own part draws itself a moment later.
    requestAnimationFrame(() => (this.#height = figures?.offsetHeight ?? 0));
  }

  #asked() {
    const t = constantsWords();
    return html`<div class="asked no-print">
      <tl-field
        kind="number"
        label=${tubeFactsWords().thickness}
        unit=${this.perMicrometre ? 'µm' : '×'}
        min="0.01"
        max="10000"
        decimals="2"
        help=${this.perMicrometre ? tubeFactsWords().micrometresHelp : tubeFactsWords().thicknessHelp}
        .value=${this.#stated()}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          if (e.detail.number === undefined) return;
          this.dispatchEvent(new CustomEvent<number>('tl-thickness', { detail: e.detail.number }));
        }}
      ></tl-field>
      ${
        this.others.length > 0
          ? html`<tl-field
              label=${t.against}
              .options=${this.others}
              .value=${this.against}
              @tl-change=${(e: CustomEvent<FieldChange>) =>
                this.dispatchEvent(new CustomEvent<string>('tl-against', { detail: e.detail.text }))}
            ></tl-field>`
          : nothing
      }
    </div>`;
  }

  #stated(): string {
    const contrast = this.facts?.film.contrast;
    if (!contrast) return '';
    return num(contrast.micrometres ?? contrast.X, 2);
  }

  #thickness(x: number): string {
    const t = constantsWords();
    return this.perMicrometre
      ? t.thicknessMicrometres(num(x / this.perMicrometre, 0))
      : t.thickness(num(x, 1));
  }

  #figures(): Figure[] {
    const { facts } = this;
    if (!facts) return [];
    const { film, halfStrength, strengthPercent } = facts;
    const t = constantsWords();
    const f = tubeFactsWords();
    const { contrast, fullHiding, scattering, undertone } = film;
    const hides = fullHiding.micrometres ?? fullHiding.X;
    const thick = (v: number): string =>
      fullHiding.micrometres ? f.inMicrometres(places(v)) : `${places(v)} ×`;
    const scope = contrast.iso6504 ? f.scope.both : contrast.astmD2805 ? f.scope.astm : f.scope.neither;
    const at550 = scattering?.wavelengths.indexOf(550) ?? -1;
    const against = this.others.find((o) => o.value === this.against)?.label ?? '';
    return [
      {
        name: f.contrast(
          contrast.micrometres === null
            ? f.inUnits(places(contrast.X))
            : f.inMicrometres(places(contrast.micrometres)),
        ),
        figure: num(contrast.value, 2),
        means: `${f.between(num(contrast.low, 2), num(contrast.high, 2))}; ${f.Y(num(contrast.Y, 0))}: ${scope}`,
      },
      { name: f.hides, figure: thick(hides.value), means: f.between(thick(hides.low), thick(hides.high)) },
      ...(scattering
        ? [
            {
              name: f.scattering,
              figure: places(scattering.value[at550]!),
              means: `${f.perMicrometre}, ${f.between(places(scattering.low[at550]!), places(scattering.high[at550]!))}`,
            },
          ]
        : []),
      {
        name: f.undertone,
        figure: patchName(patchOfLab({ ...undertone.Lab, white: 'D65/10deg' })),
        means: f.sureTo(num(undertone.radius, 1)),
      },
      ...(halfStrength
        ? [
            {
              name: f.half,
              figure: `1:${places(halfStrength.value)}`,
              means: f.halfMeans(places(halfStrength.low), places(halfStrength.high)),
            },
          ]
        : []),
      ...(strengthPercent
        ? [
            {
              name: t.strength,
              figure: `${places(strengthPercent.value)} %`,
              means: t.strengthMeans(against, places(strengthPercent.low), places(strengthPercent.high)),
            },
          ]
        : []),
    ];
  }
}

/** Two places that count: a bound of a doubt needs no more. */
function places(value: number): string {
  return num(value, value >= 10 ? 0 : value >= 1 ? 1 : value >= 0.1 ? 2 : 3);
}

define('tl-tube-films', TlTubeFilms);
