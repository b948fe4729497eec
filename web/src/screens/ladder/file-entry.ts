import { css, html, nothing } from 'lit';
import type { TakeReading } from '../../../../server/api/readings.ts';
import { ProblemError } from '../../api/problem.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { GEOMETRIES } from './typed-entry.ts';

export type FileReading = Omit<Extract<TakeReading, { source: 'file' }>, 'over'>;
const SCALES = ['fraction', 'per cent'] as const satisfies readonly FileReading['scale'][];

/** What only a person can say about a file. */
export interface FileQuestion {
  readonly at: 'geometry' | 'scale' | 'sample';
  readonly choices: readonly string[];
}

/** The question in a refusal of the bench, where there is one. */
export function questionIn(cause: unknown): FileQuestion | undefined {
  if (!(cause instanceof ProblemError)) return undefined;
  const at = (['geometry', 'scale', 'sample'] as const).find((name) => name === cause.more['at']);
  const choices = cause.more['choices'];
  if (!at || !Array.isArray(choices)) return undefined;
  return { at, choices: choices.filter((c) => typeof c === 'string') };
}

/** A reading from a file of another instrument. The file's text goes to the bench; its path does not. */
export class TlFileEntry extends TlElement {
  static override properties = {
    label: { type: String },
    busy: { type: Boolean },
    refusal: { state: true },
    sample: { state: true },
    geometry: { state: true },
    scale: { state: true },
    question: { attribute: false },
  };
  declare label: string;
  declare busy: boolean;
  declare refusal: string;
  declare sample: string;
  declare geometry: string;
  declare scale: string;
  /** What the bench asked about the last file: the field of the answer, and the answers there are. */
  declare question: FileQuestion | undefined;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
        max-inline-size: 44rem;
      }
      label {
        display: grid;
        gap: 4px;
        font-weight: 650;
      }
      input {
        border: var(--edge);
        background: var(--raised);
        padding: 10px;
        min-block-size: var(--target);
        inline-size: 100%;
        font-weight: 400;
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr));
        gap: var(--s2);
      }
      button {
        justify-self: start;
      }
      input::file-selector-button {
        font: inherit;
        color: inherit;
        background: transparent;
        border: var(--edge);
        padding: 4px 12px;
        margin-inline-end: 12px;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.busy = false;
    this.refusal = '';
    this.sample = '';
    this.geometry = '';
    this.scale = '';
    this.question = undefined;
  }

  /** A question puts the hand on the field that answers it. */
  override updated(changed: Map<string, unknown>): void {
    if (!changed.has('question') || !this.question) return;
    this.renderRoot.querySelector<HTMLElement>(`.${this.question.at}`)?.focus();
  }

  override render() {
    const t = ladderWords();
    return html`
      <label
        >${t.file}
        <input type="file" accept=".csv,.txt,.cgats,.it8,.cxf,.xml,text/*" />
        <span class="small">${t.fileHelp}</span>
      </label>
      <div class="two">
        <tl-field
          class="geometry"
          label=${t.geometry}
          .value=${this.geometry}
          .options=${[
            { value: '', label: t.asFileSays },
            ...GEOMETRIES.map((g) => ({ value: g, label: t.geometries[g] })),
          ]}
          @tl-change=${(e: CustomEvent<FieldChange>) => (this.geometry = e.detail.text)}
        ></tl-field>
        <tl-field
          class="scale"
          label=${t.scaleKind}
          .value=${this.scale}
          .options=${[
            { value: '', label: t.asFileSays },
            ...SCALES.map((s) => ({ value: s, label: t.fileScales[s] })),
          ]}
          @tl-change=${(e: CustomEvent<FieldChange>) => (this.scale = e.detail.text)}
        ></tl-field>
      </div>
      <tl-field
        class="sample"
        label=${t.sample}
        .value=${this.sample}
        .suggestions=${this.question?.at === 'sample' ? this.question.choices : undefined}
        @tl-change=${(e: CustomEvent<FieldChange>) => (this.sample = e.detail.text)}
      ></tl-field>
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      <button type="button" ?disabled=${this.busy} @click=${this.#take}>${this.label}</button>
    `;
  }

  readonly #take = async (): Promise<void> => {
    const file = this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.files?.[0];
    this.refusal = file ? '' : ladderWords().noFile;
    if (!file) return;
    const geometry = GEOMETRIES.find((g) => g === this.geometry);
    const scale = SCALES.find((s) => s === this.scale);
    const sample = this.sample.trim();
    const detail: FileReading = {
      source: 'file',
      fileName: file.name,
      text: await file.text(),
      ...(sample ? { sample } : {}),
      ...(geometry ? { geometry } : {}),
      ...(scale ? { scale } : {}),
    };
    this.dispatchEvent(
      new CustomEvent<FileReading>('tl-file-reading', { detail, bubbles: true, composed: true }),
    );
  };
}
define('tl-file-entry', TlFileEntry);
