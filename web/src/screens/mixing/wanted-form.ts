import { css, html, nothing } from 'lit';
import type { TypedReading } from '../../../../server/api/readings.ts';
import { DEFAULT_WHITE } from '../../../../src/colour/illuminant.ts';
import { type Lab, labF } from '../../../../src/colour/lab.ts';
import { luminanceOfValue } from '../../../../src/colour/munsell-value.ts';
import { patchOfLab } from '../../design/patch.ts';
import '../../parts/choice.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import '../ladder/typed-entry.ts';
import type { WantedColour } from './mix-state.ts';
import { colourOfTyped, readUnderHead } from './read-pile.ts';
import { said } from '../../text/said.ts';

type Way = 'painter' | 'lab' | 'head';

/** Names a wanted colour: as a painter does, by numbers, or by a reading. Sends `tl-wanted`. */
export class TlWantedForm extends TlElement {
  static override properties = {
    headReady: { type: Boolean },
    wanted: { attribute: false },
    action: { attribute: false },
    way: { state: true },
    three: { state: true },
    refusal: { state: true },
    busy: { state: true },
  };
  declare headReady: boolean;
  declare wanted: WantedColour | undefined;
  /** What taking the colour is called. */
  declare action: string | undefined;
  declare way: Way;
  /** Value, chroma and hue angle, or L*, a* and b*. */
  declare three: Readonly<Record<Exclude<Way, 'head'>, readonly [number, number, number]>>;
  declare refusal: string;
  declare busy: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      .named {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(7rem, 11rem);
        gap: var(--s3);
        align-items: end;
      }
      .three {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(7.5rem, 1fr));
        gap: var(--s2);
        align-items: start;
      }
      @media (max-width: 34rem) {
        .named {
          grid-template-columns: minmax(0, 1fr);
        }
      }
      summary {
        min-block-size: var(--target);
        align-content: center;
        font-weight: 650;
        cursor: pointer;
      }
    `,
  ];

  constructor() {
    super();
    this.headReady = false;
    this.wanted = undefined;
    this.action = undefined;
    this.way = 'painter';
    this.three = { painter: [6, 20, 60], lab: [62, 10, 17] };
    this.refusal = '';
    this.busy = false;
  }

  override render() {
    const t = mixingWords();
    return html`<tl-choice
        label=${t.how}
        .value=${this.way}
        .options=${(['painter', 'lab', 'head'] as const).map((value) => ({ value, label: t.ways[value] }))}
        @tl-choose=${(e: CustomEvent<Way>) => {
          this.way = e.detail;
          this.refusal = '';
        }}
      ></tl-choice>
      ${this.way === 'head' ? this.#reading() : this.#numbers(this.way)}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}`;
  }

  #numbers(way: 'painter' | 'lab') {
    const t = mixingWords();
    const named =
      way === 'painter'
        ? ([
            [t.value, 0, 10, 1, ''],
            [t.chroma, 0, 120, 0, ''],
            [t.hue, 0, 360, 0, '°'],
          ] as const)
        : ([
            ['L*', 0, 100, 1, ''],
            ['a*', -120, 120, 1, ''],
            ['b*', -120, 120, 1, ''],
          ] as const);
    const three = this.three[way];
    return html`<div class="named">
        <div class="three">
          ${named.map(
            ([label, min, max, decimals, unit], i) =>
              html`<tl-field
                kind="number"
                label=${label}
                min=${min}
                max=${max}
                unit=${unit}
                help=${label === t.hue ? t.hueHelp : ''}
                .value=${num(three[i]!, decimals)}
                @tl-change=${(e: CustomEvent<FieldChange>) => this.#set(way, i, e.detail.number)}
              ></tl-field>`,
          )}
        </div>
        <tl-drawdown size="fill" .patch=${patchOfLab(this.#lab(way))} heading=${t.want}></tl-drawdown>
      </div>
      <div class="row">
        <button type="button" @click=${() => this.#want({ lab: this.#lab(way) })}>
          ${this.action ?? t.use}
        </button>
        ${
          this.wanted
            ? html`<button type="button" class="quiet" @click=${() => this.#want(undefined)}>
                ${t.forget}
              </button>`
            : nothing
        }
      </div>`;
  }

  #reading() {
    const t = mixingWords();
    return html`${
        this.headReady
          ? html`<div>
              <button type="button" ?disabled=${this.busy} @click=${this.#read}>${t.readIt}</button>
            </div>`
          : html`<tl-notice>${t.noHead}</tl-notice>`
      }
      <details ?open=${!this.headReady}>
        <summary>${t.typed}</summary>
        <tl-typed-entry
          label=${this.action ?? t.take}
          @tl-typed-reading=${(e: CustomEvent<TypedReading>) => this.#want(colourOfTyped(e.detail))}
        ></tl-typed-entry>
      </details>`;
  }

  #set(way: 'painter' | 'lab', i: number, value: number | undefined): void {
    if (value === undefined) return;
    const three = [...this.three[way]] as [number, number, number];
    three[i] = value;
    this.three = { ...this.three, [way]: three };
  }

  #lab(way: 'painter' | 'lab'): Lab {
    const [one, two, three] = this.three[way];
    if (way === 'lab') return { L: one, a: two, b: three, white: DEFAULT_WHITE };
    // Munsell value as luminance; taken as Y of the colour under D65, good to about 0.1 of a value.
    const L = 116 * labF(luminanceOfValue(one) / 100) - 16;
    const h = (three * Math.PI) / 180;
    return { L, a: two * Math.cos(h), b: two * Math.sin(h), white: DEFAULT_WHITE };
  }

  readonly #read = async (): Promise<void> => {
    this.busy = true;
    this.refusal = '';
    try {
      this.#want(await readUnderHead());
    } catch (cause) {
      this.refusal = cause instanceof Error ? said(cause.message) : String(cause);
    }
    this.busy = false;
  };

  #want(detail: WantedColour | undefined): void {
    this.dispatchEvent(new CustomEvent<WantedColour | undefined>('tl-wanted', { detail, bubbles: true }));
  }
}

define('tl-wanted-form', TlWantedForm);
