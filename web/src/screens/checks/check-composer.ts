import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { checksWords } from '../../text/checks.ts';
import { num } from '../../text/numbers.ts';
import { quickBench } from '../../workers/palette-controller.ts';
import type { PredictAnswer } from '../../workers/predict-job.ts';
import type { Masses } from './teaching-mixture.ts';

export interface ComposedCheck {
  readonly title: string;
  readonly masses: Masses;
}

interface Part {
  readonly id: string;
  readonly grams: number | undefined;
}

/** A mixture to be read and never fitted: tubes and grams, with the prediction beside them as they are typed. */
export class TlCheckComposer extends TlElement {
  static override properties = {
    profile: { attribute: false },
    start: { attribute: false },
    name: { state: true },
    parts: { state: true },
    refusal: { state: true },
  };
  declare profile: PaletteProfile;
  /** Grams to begin with. */
  declare start: Masses;
  declare name: string;
  declare parts: readonly Part[];
  declare refusal: string;
  readonly #prediction = new RemoteController<PredictAnswer>(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1.3fr) minmax(0, 1fr);
        gap: var(--s3) var(--s4);
        align-items: start;
      }
      .part {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 9.5rem auto;
        gap: 8px;
        align-items: end;
      }
      tl-drawdown {
        inline-size: 100%;
      }
      @media (max-width: 44rem) {
        :host {
          grid-template-columns: minmax(0, 1fr);
        }
        .part {
          grid-template-columns: minmax(0, 1fr) 7.5rem;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.start = {};
    this.name = '';
    this.parts = [];
    this.refusal = '';
  }

  override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('start')) this.#set(Object.entries(this.start).map(([id, grams]) => ({ id, grams })));
  }

  get #masses(): Masses {
    return Object.fromEntries(this.parts.filter((p) => (p.grams ?? 0) > 0).map((p) => [p.id, p.grams!]));
  }

  override render() {
    const t = checksWords();
    const predicted = this.#prediction.value;
    return html`<div class="stack">
        <tl-field
          label=${t.name}
          help=${t.nameHelp}
          .value=${this.name}
          @tl-change=${(e: CustomEvent<FieldChange>) => (this.name = e.detail.text)}
        ></tl-field>
        ${this.parts.map((part, i) => this.#part(part, i))}
        <div class="row">
          <button type="button" ?disabled=${!this.#spare()} @click=${this.#add}>${t.addTube}</button>
          <button
            type="button"
            class="quiet"
            @click=${() => this.dispatchEvent(new CustomEvent('tl-leave', { bubbles: true }))}
          >
            ${t.cancel}
          </button>
        </div>
        ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
        <tl-next label=${t.keep} hint=${t.keepHint} @click=${this.#keep}></tl-next>
      </div>
      <tl-drawdown
        size="fill"
        heading=${t.predictedNow}
        .patch=${predicted && patchOfReflectance(predicted.reflectance)}
        .interval=${predicted?.interval.radius95}
      ></tl-drawdown>`;
  }

  #part(part: Part, i: number) {
    const t = checksWords();
    const free = this.profile.tubes.filter((o) => o.id === part.id || !this.parts.some((p) => p.id === o.id));
    const label = this.profile.tubes.find((o) => o.id === part.id)?.label ?? part.id;
    const change = (to: Partial<Part>): void =>
      this.#set(this.parts.map((p, k) => (k === i ? { ...p, ...to } : p)));
    return html`<div class="part">
      <tl-field
        label=${t.tube}
        .value=${part.id}
        .options=${free.map((o) => ({ value: o.id, label: o.label }))}
        @tl-change=${(e: CustomEvent<FieldChange>) => change({ id: e.detail.text })}
      ></tl-field>
      <tl-field
        kind="number"
        label=${t.grams}
        unit="g"
        min="0"
        max="10000"
        .value=${part.grams === undefined ? '' : num(part.grams, 2)}
        @tl-change=${(e: CustomEvent<FieldChange>) => change({ grams: e.detail.number })}
      ></tl-field>
      ${
        this.parts.length > 2
          ? html`<button
              type="button"
              class="quiet"
              aria-label="${t.removeTube} ${label}"
              @click=${() => this.#set(this.parts.filter((_, k) => k !== i))}
            >
              ${t.removeTube}
            </button>`
          : nothing
      }
    </div>`;
  }

  #spare() {
    return this.profile.tubes.find((o) => !this.parts.some((p) => p.id === o.id));
  }

  readonly #add = (): void => {
    const spare = this.#spare();
    if (spare) this.#set([...this.parts, { id: spare.id, grams: 1 }]);
  };

  #set(parts: readonly Part[]): void {
    this.parts = parts;
    this.refusal = '';
    const masses = this.#masses;
    if (Object.keys(masses).length > 0) {
      void this.#prediction.run((signal) => quickBench.run('predict', { masses }, { signal }));
    }
  }

  readonly #keep = (): void => {
    const masses = this.#masses;
    if (Object.keys(masses).length < 2) {
      this.refusal = checksWords().needTwo;
      return;
    }
    const labels = Object.keys(masses).map((id) => this.profile.tubes.find((o) => o.id === id)?.label ?? id);
    const detail: ComposedCheck = { title: this.name.trim() || labels.join(' + '), masses };
    this.dispatchEvent(new CustomEvent<ComposedCheck>('tl-composed', { detail, bubbles: true }));
  };
}
define('tl-check-composer', TlCheckComposer);
