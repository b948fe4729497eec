import { css, html, nothing } from 'lit';
import type { ImportPreview, ImportRequest } from '../../../../server/api/imports.ts';
import { call } from '../../api/call.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/figures.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { num } from '../../text/numbers.ts';
import { profileWords } from '../../text/profile.ts';
import { said } from '../../text/said.ts';

type Assume = NonNullable<ImportRequest['assume']>;

const MOST_BYTES = 20_000_000;

/** Takes a file in by two steps: look into it, answer what it leaves open, then keep it. Sends `tl-imported`. */
export class TlProfileImport extends TlElement {
  static override properties = {
    assume: { state: true },
    refusal: { state: true },
    busy: { state: true },
  };
  declare assume: Assume;
  declare refusal: string;
  declare busy: boolean;
  readonly #preview = new RemoteController<ImportPreview | undefined>(this);
  #open = false;
  #file: { readonly fileName: string; readonly text: string } | undefined;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      label {
        display: grid;
        gap: 4px;
        font-weight: 650;
        max-inline-size: 36rem;
      }
      input {
        border: var(--edge);
        background: var(--raised);
        padding: 10px;
        min-block-size: var(--target);
        inline-size: 100%;
        font-weight: 400;
      }
      .preview {
        border: var(--edge);
        padding: var(--s3);
      }
      input::file-selector-button {
        font: inherit;
        color: inherit;
        background: transparent;
        border: var(--edge);
        padding: 4px 12px;
        margin-inline-end: 12px;
      }
      tl-field {
        max-inline-size: 24rem;
        margin-block-start: 8px;
      }
      tl-next {
        max-inline-size: 30rem;
      }
    `,
  ];

  constructor() {
    super();
    this.assume = {};
    this.refusal = '';
    this.busy = false;
  }

  /** Told whether a file lies open, so that the page has one next step only. */
  override updated(): void {
    const open = this.#preview.value !== undefined;
    if (open === this.#open) return;
    this.#open = open;
    this.dispatchEvent(new CustomEvent<boolean>('tl-looking', { detail: open, bubbles: true }));
  }

  override render() {
    const t = profileWords();
    const preview = this.#preview.value;
    return html`<p>${t.importHow}</p>
      <label
        >${t.file}
        <input
          type="file"
          accept=".json,.csv,.txt,.cgats,.cxf,.xml,application/json"
          @change=${this.#chosen}
        />
      </label>
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${this.#preview.error ? html`<tl-notice kind="error" live>${this.#preview.error.message}</tl-notice>` : nothing}
      ${this.#preview.pending && !preview ? html`<tl-progress label=${t.reading}></tl-progress>` : nothing}
      ${preview ? this.#shown(preview) : nothing}`;
  }

  #shown(preview: ImportPreview) {
    const t = profileWords();
    return html`<section class="preview stack" aria-live="polite">
      <h3>${preview.title || t.preview}</h3>
      <p>${t.kind} ${t.kinds[preview.kind]}. ${t.geometry}: ${preview.geometry}.</p>
      <tl-figures
        .figures=${[
          { name: t.tubes, figure: num(preview.tubes.length, 0) },
          { name: t.swatches, figure: num(preview.swatchCount, 0) },
          { name: t.readingCount, figure: num(preview.readingCount, 0) },
          { name: t.checks, figure: num(preview.checkCount, 0) },
        ]}
      ></tl-figures>
      <p>${preview.tubes.map((tube) => tube.label).join(', ')}</p>
      ${preview.warnings.map((w) => html`<tl-notice kind="warning">${said(w)}</tl-notice>`)}
      ${
        preview.assumptions.length === 0
          ? html`<p>${t.nothingAssumed}</p>`
          : html`<h3>${t.assumed}</h3>
              ${preview.assumptions.map((a) => this.#assumption(a, preview))}`
      }
      <tl-next label=${t.take} hint=${t.takeHint} ?busy=${this.busy} @click=${this.#take}></tl-next>
    </section>`;
  }

  #assumption(assumption: ImportPreview['assumptions'][number], preview: ImportPreview) {
    const { member } = assumption;
    if (!member || assumption.options.length < 2) {
      return html`<tl-notice>${said(assumption.sentence)} ${said(assumption.value)}</tl-notice>`;
    }
    const label = (value: string): string =>
      member === 'white' ? (preview.tubes.find((tube) => tube.id === value)?.label ?? value) : value;
    return html`<tl-notice>
      ${said(assumption.sentence)}
      <tl-field
        label=${member === 'white' ? profileWords().white : profileWords().geometry}
        .value=${assumption.value}
        .options=${assumption.options.map((value) => ({ value, label: label(value) }))}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          this.assume = { ...this.assume, [member]: e.detail.text } as Assume;
          void this.#look();
        }}
      ></tl-field>
    </tl-notice>`;
  }

  readonly #chosen = async (event: Event): Promise<void> => {
    const t = profileWords();
    const file = (event.target as HTMLInputElement).files?.[0];
    this.refusal = '';
    this.assume = {};
    this.#preview.set(undefined);
    this.#file = undefined;
    if (!file) return;
    if (file.size > MOST_BYTES) {
      this.refusal = t.tooLarge(num(file.size / 1e6, 1));
      return;
    }
    this.#file = { fileName: file.name, text: await file.text() };
    await this.#look();
  };

  async #look(): Promise<void> {
    const file = this.#file;
    if (!file) return;
    const body = { ...file, assume: this.assume };
    await this.#preview.run((signal) => call('previewImport', { body, signal }));
  }

  readonly #take = async (): Promise<void> => {
    if (!this.#file) return;
    this.busy = true;
    this.refusal = '';
    try {
      const { title } = await call('importFile', { body: { ...this.#file, assume: this.assume } });
      this.#preview.set(undefined);
      this.#file = undefined;
      const input = this.renderRoot.querySelector<HTMLInputElement>('input[type=file]');
      if (input) input.value = '';
      say(profileWords().taken(title));
      this.dispatchEvent(new CustomEvent('tl-imported', { bubbles: true }));
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
    this.busy = false;
  };
}
define('tl-profile-import', TlProfileImport);
