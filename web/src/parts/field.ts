import { css, html, nothing } from 'lit';
import { num, parseNumber } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

export interface FieldOption {
  readonly value: string;
  readonly label: string;
}

/** What a field tells at each change. `number` is there when the field is a number and the text is one in range. */
export interface FieldChange {
  readonly text: string;
  readonly number: number | undefined;
  readonly error: string;
}

/**
 * A field with its name, its unit, a word of help and one clear sentence when what was typed cannot be used.
 *
 *   <tl-field label="Batch note" .value=${x} @tl-change=${(e: CustomEvent<FieldChange>) => ...}></tl-field>
 *   <tl-field kind="number" label="White" unit="g" min="0" max="500" decimals="2"></tl-field>
 *   <tl-field label="Drying" .options=${[{ value: 'wet', label: 'wet' }]}></tl-field>
 */
export class TlField extends TlElement {
  static override properties = {
    label: { type: String },
    value: { type: String },
    kind: { type: String },
    unit: { type: String },
    help: { type: String },
    error: { type: String },
    placeholder: { type: String },
    min: { type: Number },
    max: { type: Number },
    decimals: { type: Number },
    required: { type: Boolean },
    options: { attribute: false },
    suggestions: { attribute: false },
    rows: { type: Number },
    touched: { state: true },
  };
  declare label: string;
  declare value: string;
  declare kind: 'text' | 'number' | 'date' | 'area';
  declare unit: string;
  declare help: string;
  /** A refusal from elsewhere (the server), shown before the field's own. */
  declare error: string;
  declare placeholder: string;
  declare min: number | undefined;
  declare max: number | undefined;
  declare decimals: number;
  declare required: boolean;
  declare options: readonly FieldOption[] | undefined;
  declare suggestions: readonly string[] | undefined;
  declare rows: number;
  declare touched: boolean;

  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };
  static override styles = [
    TlElement.styles,
    css`
      label {
        display: block;
        font-weight: 650;
        margin-block-end: 4px;
      }
      .box {
        display: flex;
        align-items: stretch;
        border: var(--edge);
        background: var(--raised);
      }
      .box:focus-within {
        outline: 3px solid var(--ink);
        outline-offset: 2px;
      }
      input,
      select,
      textarea {
        flex: 1;
        min-inline-size: 0;
        inline-size: 100%;
        min-block-size: calc(var(--target) - 4px);
        padding: 8px 12px;
        border: 0;
        border-radius: 0;
        background: transparent;
        outline: none;
        box-shadow: none;
      }
      select {
        background: var(--raised);
      }
      textarea {
        resize: vertical;
        line-height: 1.4;
      }
      input[inputmode='decimal'] {
        font-size: var(--t-lead);
        font-weight: 650;
      }
      ::placeholder {
        color: var(--ink);
        font-style: italic;
        font-weight: 400;
        opacity: 1;
      }
      .unit {
        display: grid;
        align-items: center;
        padding-inline: 12px;
        border-inline-start: var(--rule);
      }
      .help,
      .error {
        font-size: var(--t-small);
        margin-block-start: 4px;
      }
      .error {
        background: var(--ink);
        color: var(--on-ink);
        padding: 6px 12px;
        font-weight: 600;
        margin-block-start: 0;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.value = '';
    this.kind = 'text';
    this.unit = '';
    this.help = '';
    this.error = '';
    this.placeholder = '';
    this.min = undefined;
    this.max = undefined;
    this.decimals = 2;
    this.required = false;
    this.options = undefined;
    this.suggestions = undefined;
    this.rows = 4;
    this.touched = false;
  }

  /** The number typed, if it is one and in range. */
  get number(): number | undefined {
    return this.problem() ? undefined : parseNumber(this.value);
  }

  /** The sentence that says what is wrong, or ''. */
  problem(): string {
    const t = partsWords();
    const text = this.value.trim();
    if (text === '') return this.required ? t.needed : '';
    if (this.kind !== 'number') return '';
    const value = parseNumber(text);
    const unit = this.unit ? ` ${this.unit}` : '';
    if (value === undefined) return t.notANumber(text);
    if (this.min !== undefined && value < this.min) {
      return t.tooSmall(text + unit, num(this.min, decimalsOf(this.min)) + unit);
    }
    if (this.max !== undefined && value > this.max) {
      return t.tooLarge(text + unit, num(this.max, decimalsOf(this.max)) + unit);
    }
    return '';
  }

  /** Shows the field's own problem from now on; returns true when there is none. */
  check(): boolean {
    this.touched = true;
    return this.problem() === '';
  }

  override render() {
    const error = this.error || (this.touched ? this.problem() : '');
    return html`<label for="f">${this.label}</label>
      <div class="box">
        ${this.options ? this.#select(error) : this.kind === 'area' ? this.#area(error) : this.#input(error)}
        ${this.unit ? html`<span class="unit">${this.unit}</span>` : nothing}
      </div>
      <div class="error" id="e" role="alert" ?hidden=${!error}>${error}</div>
      ${this.help ? html`<div class="help" id="h">${this.help}</div>` : nothing}`;
  }

  #described(error: string): string {
    return [error ? 'e' : '', this.help ? 'h' : ''].filter(Boolean).join(' ');
  }

  #input(error: string) {
    return html`<input
        id="f"
        .value=${this.value}
        type=${this.kind === 'date' ? 'date' : 'text'}
        inputmode=${this.kind === 'number' ? 'decimal' : 'text'}
        autocomplete="off"
        spellcheck="false"
        list=${this.suggestions ? 's' : nothing}
        placeholder=${this.placeholder || nothing}
        aria-invalid=${error ? 'true' : 'false'}
        aria-required=${this.required}
        aria-describedby=${this.#described(error) || nothing}
        @input=${this.#typed}
        @change=${this.#left}
      />${
        this.suggestions
          ? html`<datalist id="s">
              ${this.suggestions.map((s) => html`<option value=${s}></option>`)}
            </datalist>`
          : nothing
      }`;
  }

  #area(error: string) {
    return html`<textarea
      id="f"
      rows=${this.rows}
      .value=${this.value}
      spellcheck="false"
      placeholder=${this.placeholder || nothing}
      aria-invalid=${error ? 'true' : 'false'}
      aria-describedby=${this.#described(error) || nothing}
      @input=${this.#typed}
      @change=${this.#left}
    ></textarea>`;
  }

  #select(error: string) {
    return html`<select
      id="f"
      aria-invalid=${error ? 'true' : 'false'}
      aria-describedby=${this.#described(error) || nothing}
      @change=${this.#typed}
    >
      ${this.options?.map(
        (o) => html`<option value=${o.value} .selected=${o.value === this.value}>${o.label}</option>`,
      )}
    </select>`;
  }

  #typed(event: Event): void {
    this.value = (event.target as HTMLInputElement).value;
    this.error = '';
    const error = this.problem();
    if (this.touched && !error) this.touched = false;
    const detail: FieldChange = { text: this.value, number: this.number, error };
    this.dispatchEvent(new CustomEvent<FieldChange>('tl-change', { detail, bubbles: true, composed: true }));
  }

  #left(): void {
    this.touched = this.value.trim() !== '';
  }
}

function decimalsOf(value: number): number {
  return Math.min(4, (String(value).split('.')[1] ?? '').length);
}
define('tl-field', TlField);
