import { css, html, nothing } from 'lit';
import type { TakeReading } from '../../../../server/api/readings.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { GEOMETRIES } from './typed-entry.ts';

export type FileReading = Omit<Extract<TakeReading, { source: 'file' }>, 'over'>;

/** A reading from a file of another instrument. The file's text goes to the bench; its path does not. */
export class TlFileEntry extends TlElement {
  static override properties = {
    label: { type: String },
    busy: { type: Boolean },
    refusal: { state: true },
    sample: { state: true },
    geometry: { state: true },
  };
  declare label: string;
  declare busy: boolean;
  declare refusal: string;
  declare sample: string;
  declare geometry: string;

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
      button {
        justify-self: start;
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
  }

  override render() {
    const t = ladderWords();
    return html`
      <label
        >${t.file}
        <input type="file" accept=".csv,.txt,.cgats,.it8,.cxf,.xml,text/*" />
        <span class="small">${t.fileHelp}</span>
      </label>
      <tl-field
        label=${t.geometry}
        .value=${this.geometry}
        .options=${[
          { value: '', label: '–' },
          ...GEOMETRIES.map((g) => ({ value: g, label: t.geometries[g] })),
        ]}
        @tl-change=${(e: CustomEvent<FieldChange>) => (this.geometry = e.detail.text)}
      ></tl-field>
      <tl-field
        label=${t.sample}
        .value=${this.sample}
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
    const sample = this.sample.trim();
    const detail: FileReading = {
      source: 'file',
      fileName: file.name,
      text: await file.text(),
      ...(sample ? { sample } : {}),
      ...(geometry ? { geometry } : {}),
    };
    this.dispatchEvent(
      new CustomEvent<FileReading>('tl-file-reading', { detail, bubbles: true, composed: true }),
    );
  };
}
define('tl-file-entry', TlFileEntry);
