import { css, html, nothing } from 'lit';
import type { TypedReading } from '../../../../server/api/readings.ts';
import { ILLUMINANTS, OBSERVERS } from '../../../../src/colour/illuminant.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange, TlField } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { BenchState } from '../../state/bench-state.ts';
import { ladderWords } from '../../text/ladder.ts';
import { parseNumber } from '../../text/numbers.ts';
import { parseLines } from './typed-lines.ts';

type Kind = TypedReading['kind'];
export const GEOMETRIES = ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const;
type Geometry = (typeof GEOMETRIES)[number];
const LETTERS = { XYZ: ['X', 'Y', 'Z'], Lab: ['L*', 'a*', 'b*'] } as const;

/** What was chosen last stays for the next rung: one instrument reads a whole ladder. */
const kept = {
  kind: 'reflectance' as Kind,
  /** Chosen by hand, for the palette it was chosen in; until then the palette's own stands there. */
  geometry: '' as Geometry | '',
  paletteId: '' as string | null,
  scale: '0-1' as '0-1' | 'percent',
  xyzScale: '100' as '100' | '1',
  illuminant: 'D65' as (typeof ILLUMINANTS)[number],
  observer: '10deg' as (typeof OBSERVERS)[number],
};

/** A reading typed or pasted in. Sends `tl-typed-reading`; nothing about it is guessed. */
export class TlTypedEntry extends TlElement {
  static override properties = {
    label: { type: String },
    text: { state: true },
    refusal: { state: true },
    busy: { type: Boolean },
    turn: { state: true },
  };
  /** The button's words. */
  declare label: string;
  declare text: string;
  declare refusal: string;
  declare busy: boolean;
  declare turn: number;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
        max-inline-size: 44rem;
      }
      .three {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 9rem), 1fr));
        gap: var(--s2);
        align-items: start;
      }
      button {
        justify-self: start;
      }
    `,
  ];

  readonly #bench = new BenchState(this);

  constructor() {
    super();
    this.label = '';
    this.text = '';
    this.refusal = '';
    this.busy = false;
    this.turn = 0;
  }

  get #paletteId(): string | null {
    return this.#bench.value?.currentPaletteId ?? null;
  }

  /** Empty where nobody has said it yet: it is asked for then, not guessed. */
  get #geometry(): Geometry | '' {
    if (kept.geometry && kept.paletteId === this.#paletteId) return kept.geometry;
    const state = this.#bench.value;
    const palette = state?.palettes.find((p) => p.id === state.currentPaletteId);
    return palette?.geometry ?? state?.instrument.geometry ?? '';
  }

  override render() {
    const t = ladderWords();
    const colour = kept.kind === 'XYZ' || kept.kind === 'Lab';
    return html`
      <tl-choice
        label=${t.typedKind}
        .options=${(['reflectance', 'bands', 'XYZ', 'Lab'] as const).map((value) => ({
          value,
          label: t.kinds[value],
        }))}
        .value=${kept.kind}
        @tl-choose=${(e: CustomEvent<Kind>) => this.#keep({ kind: e.detail })}
      ></tl-choice>
      <div class="three">
        <tl-field
          class="geometry"
          required
          label=${t.geometry}
          .value=${this.#geometry}
          .options=${[
            ...(this.#geometry ? [] : [{ value: '', label: '–' }]),
            ...GEOMETRIES.map((value) => ({ value, label: t.geometries[value] })),
          ]}
          @tl-change=${(e: CustomEvent<FieldChange>) =>
            this.#keep({ geometry: e.detail.text as Geometry, paletteId: this.#paletteId })}
        ></tl-field>
        ${
          colour
            ? html`${this.#pick('illuminant', t.illuminant, ILLUMINANTS, (i) => i)}
              ${this.#pick('observer', t.observer, OBSERVERS, (o) => t.observers[o])}
              ${
                kept.kind === 'XYZ'
                  ? this.#pick('xyzScale', t.scaleKind, ['100', '1'] as const, (s) => t.scales[s])
                  : nothing
              }`
            : this.#pick('scale', t.scaleKind, ['0-1', 'percent'] as const, (s) => t.scales[s])
        }
      </div>
      ${colour ? this.#letters() : this.#lines()}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      <button type="button" ?disabled=${this.busy} @click=${this.#take}>${this.label}</button>
    `;
  }

  #letters() {
    const letters = kept.kind === 'Lab' ? LETTERS.Lab : LETTERS.XYZ;
    return html`<div class="three">
      ${letters.map(
        (letter) => html`<tl-field class="letter" kind="number" required label=${letter}></tl-field>`,
      )}
    </div>`;
  }

  #lines() {
    const t = ladderWords();
    const bands = kept.kind === 'bands';
    return html`<tl-field
      kind="area"
      rows="8"
      label=${bands ? t.pasteBands : t.paste}
      help=${bands ? t.pasteBandsHelp : t.pasteHelp}
      placeholder=${bands ? '415 26 0,112' : '400 0,112'}
      .value=${this.text}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        this.text = e.detail.text;
        this.refusal = '';
      }}
    ></tl-field>`;
  }

  #pick<K extends Exclude<keyof typeof kept, 'paletteId'>, T extends (typeof kept)[K] & string>(
    key: K,
    label: string,
    options: readonly T[],
    name: (value: T) => string,
  ) {
    return html`<tl-field
      label=${label}
      .value=${kept[key]}
      .options=${options.map((value) => ({ value, label: name(value) }))}
      @tl-change=${(e: CustomEvent<FieldChange>) => this.#keep({ [key]: e.detail.text })}
    ></tl-field>`;
  }

  #keep(change: Partial<typeof kept>): void {
    Object.assign(kept, change);
    this.refusal = '';
    this.turn += 1;
  }

  readonly #take = (): void => {
    this.refusal = '';
    try {
      const detail = this.#reading();
      if (!detail) return;
      this.dispatchEvent(
        new CustomEvent<TypedReading>('tl-typed-reading', { detail, bubbles: true, composed: true }),
      );
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  };

  #reading(): TypedReading | undefined {
    const { scale, illuminant, observer } = kept;
    const geometry = this.#geometry;
    if (!geometry) throw new Error(ladderWords().needGeometry);
    switch (kept.kind) {
      case 'reflectance': {
        const rows = parseLines(this.text, 2, 2);
        return {
          kind: 'reflectance',
          geometry,
          scale,
          wavelengths: rows.map((r) => r[0]!),
          values: rows.map((r) => r[1]!),
        };
      }
      case 'bands': {
        const rows = parseLines(this.text, 3, 1);
        return {
          kind: 'bands',
          geometry,
          scale,
          bands: rows.map((r) => ({ centre: r[0]!, fwhm: r[1]! })),
          values: rows.map((r) => r[2]!),
        };
      }
      default: {
        const fields = [...this.renderRoot.querySelectorAll<TlField>('.letter')];
        const bad = fields.filter((f) => !f.check());
        if (bad.length > 0) {
          bad[0]?.focus();
          return undefined;
        }
        const values = fields.map((f) => parseNumber(f.value)!);
        return kept.kind === 'XYZ'
          ? { kind: 'XYZ', geometry, scale: kept.xyzScale, illuminant, observer, values }
          : { kind: 'Lab', geometry, illuminant, observer, values };
      }
    }
  }

  /** Empties the numbers for the next reading; what was chosen above stays. */
  clear(): void {
    this.text = '';
    for (const field of this.renderRoot.querySelectorAll<TlField>('.letter')) {
      field.value = '';
      field.touched = false;
    }
  }
}
define('tl-typed-entry', TlTypedEntry);
