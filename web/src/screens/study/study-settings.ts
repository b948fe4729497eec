import { css, html } from 'lit';
import type { FamilySettings, Split, Stepping } from '../../../../src/study/index.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../mixing/scale-fields.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { type StudyTable, changeStudy } from './study-state.ts';

/** How the picture is parted, and how large it is painted. Sends `tl-settings` and `tl-tubes`. */
export class TlStudySettings extends TlElement {
  static override properties = { study: { attribute: false }, canvasHeight: { type: Number } };
  declare study: StudyTable;
  declare canvasHeight: number;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr));
        gap: var(--s4);
        align-items: start;
      }
      .numbers {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: var(--s2);
        align-items: end;
      }
    `,
  ];

  override render() {
    const t = studyWords();
    const { settings, canvas, maxTubes } = this.study;
    return html`<section class="stack">
        <h2>${t.families}</h2>
        ${this.#choice(
          t.steps,
          String(settings.steps),
          ['2', '3', '4', '5', '6', '7', '9'],
          (v) => v,
          (v) => ({
            steps: Number(v),
          }),
        )}
        ${this.#choice(
          t.split,
          settings.split,
          ['neutral', 'within each step', 'none'] as const,
          (v) => t.splits[v],
          (v) => ({
            split: v as Split,
          }),
        )}
        ${this.#choice(
          t.stepping,
          settings.stepping,
          ['natural', 'even'] as const,
          (v) => t.steppings[v],
          (v) => ({
            stepping: v as Stepping,
          }),
        )}
        ${this.#choice(
          t.brush,
          String(settings.specks),
          ['0', '2', '4', '8'] as const,
          (v) => t.brushes[v],
          (v) => ({
            specks: Number(v),
          }),
        )}
        <p class="small">${t.brushHelp}.</p>
      </section>
      <section class="stack">
        <h2>${t.canvas}</h2>
        <div class="numbers">
          ${this.#number(t.canvasWidth, 'cm', 1, 500, canvas.widthCentimetres, 1, (v) =>
            changeStudy({ canvas: { ...canvas, widthCentimetres: v } }),
          )}
          ${this.#number(t.film, 'µm', 10, 3000, canvas.filmMicrometres, 0, (v) =>
            changeStudy({ canvas: { ...canvas, filmMicrometres: v } }),
          )}
          ${this.#number(t.loss, '%', 0, 300, 100 * canvas.loss, 0, (v) =>
            changeStudy({ canvas: { ...canvas, loss: v / 100 } }),
          )}
          ${this.#number(t.smallest, '%', 0, 20, 100 * settings.smallestShare, 1, (v) =>
            this.#send({ smallestShare: v / 100 }),
          )}
        </div>
        <p class="small">${t.canvasHeight(num(this.canvasHeight, 1))}</p>
        <tl-scale-fields></tl-scale-fields>
        <tl-choice
          label=${t.tubes}
          .value=${String(maxTubes)}
          .options=${['2', '3', '4', '5'].map((value) => ({ value, label: value }))}
          @tl-choose=${(e: CustomEvent<string>) =>
            this.dispatchEvent(new CustomEvent<number>('tl-tubes', { detail: Number(e.detail) }))}
        ></tl-choice>
      </section>`;
  }

  #send(detail: Partial<FamilySettings>): void {
    this.dispatchEvent(new CustomEvent<Partial<FamilySettings>>('tl-settings', { detail }));
  }

  #choice<T extends string>(
    label: string,
    value: string,
    values: readonly T[],
    name: (value: T) => string,
    change: (value: string) => Partial<FamilySettings>,
  ) {
    return html`<tl-choice
      label=${label}
      .value=${value}
      .options=${values.map((v) => ({ value: v, label: name(v) }))}
      @tl-choose=${(e: CustomEvent<string>) => this.#send(change(e.detail))}
    ></tl-choice>`;
  }

  #number(
    label: string,
    unit: string,
    min: number,
    max: number,
    value: number,
    decimals: number,
    change: (value: number) => void,
  ) {
    return html`<tl-field
      kind="number"
      label=${label}
      unit=${unit}
      min=${min}
      max=${max}
      .value=${num(value, decimals)}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        if (e.detail.number !== undefined) change(e.detail.number);
      }}
    ></tl-field>`;
  }
}
define('tl-study-settings', TlStudySettings);
