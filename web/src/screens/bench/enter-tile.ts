import { html, nothing } from 'lit';
import { readNumberList, readPairs } from '../../../../src/calibrate/entry/number-list.ts';
import type { NewTile } from '../../../../server/api/tiles.ts';
import { call } from '../../api/call.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange, TlField } from '../../parts/field.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { benchSays } from '../../text/findings.ts';
import { headWords } from '../../text/head.ts';
import { foldStyles } from './fold-styles.ts';

type Way = 'sheet' | 'file' | 'placings';

/** A tile's values: typed from its sheet, from a file, or read against the tile the head is set on. */
export class TlEnterTile extends TlElement {
  static override properties = {
    idle: { type: Boolean },
    way: { state: true },
    name: { state: true },
    scale: { state: true },
    placed: { state: true },
    refusal: { state: true },
  };
  declare idle: boolean;
  declare way: Way;
  declare name: string;
  declare scale: '' | '0-1' | 'percent';
  /** What the bench said of the placings so far. */
  declare placed: string;
  declare refusal: string;

  static override styles = [TlElement.styles, foldStyles];

  constructor() {
    super();
    this.idle = true;
    this.way = 'sheet';
    this.name = '';
    this.scale = '';
    this.placed = '';
    this.refusal = '';
  }

  /** After the tile was kept. */
  clear(): void {
    this.name = '';
    this.placed = '';
    this.refusal = '';
    const sheet = this.renderRoot.querySelector<TlField>('.sheet');
    if (sheet) sheet.value = '';
  }

  override render() {
    const t = headWords();
    return html`<div class="inside">
      <h3>${t.enter}</h3>
      <tl-choice
        label=${t.enterWays}
        .options=${(['sheet', 'file', 'placings'] as const).map((way) => ({ value: way, label: t.ways[way] }))}
        .value=${this.way}
        @tl-choose=${(e: CustomEvent<Way>) => (this.way = e.detail)}
      ></tl-choice>
      ${this.way === 'placings' ? this.#placings() : nothing}
      <tl-field
        class="name"
        label=${t.tileName}
        .value=${this.name}
        @tl-change=${(e: CustomEvent<FieldChange>) => (this.name = e.detail.text)}
      ></tl-field>
      ${this.way === 'sheet' ? html`<tl-field class="sheet" kind="area" label=${t.sheet} help=${t.sheetHelp}></tl-field>` : nothing}
      ${
        this.way === 'file'
          ? html`<label
              >${t.file}
              <input type="file" accept=".csv,.txt,.cgats,.it8,.cxf,.xml,text/*" />
              <span class="small">${t.fileHelp}</span></label
            >`
          : nothing
      }
      ${
        this.way === 'placings'
          ? nothing
          : html`<tl-field
              label=${t.perCent}
              .value=${this.scale}
              .options=${(['', '0-1', 'percent'] as const).map((v) => ({ value: v, label: t.scales[v] }))}
              @tl-change=${(e: CustomEvent<FieldChange>) => (this.scale = e.detail.text as typeof this.scale)}
            ></tl-field>`
      }
      ${this.refusal ? html`<tl-notice kind="error" live>${benchSays(this.refusal)}</tl-notice>` : nothing}
      <button type="button" @click=${() => void this.#keep()}>${t.keep}</button>
    </div>`;
  }

  #placings() {
    const t = headWords();
    return html`<p>${t.placingsLead}</p>
      <button type="button" ?disabled=${!this.idle} @click=${() => void this.#place()}>${t.place}</button>
      <p role="status">${this.placed ? benchSays(this.placed) : nothing}</p>`;
  }

  async #place(): Promise<void> {
    this.refusal = '';
    try {
      this.placed = (await call('readOwnTile')).sentence;
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  }

  async #keep(): Promise<void> {
    const t = headWords();
    const name = this.name.trim();
    this.refusal = name ? '' : t.noName;
    if (!name) return;
    try {
      const detail = await this.#tile(name);
      this.dispatchEvent(new CustomEvent<NewTile>('tl-new-tile', { detail }));
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  }

  /** @throws Error with one sentence when it is not all there */
  async #tile(name: string): Promise<NewTile> {
    if (this.way === 'placings') return { from: 'placings', name };
    if (this.way === 'file') {
      const file = this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.files?.[0];
      if (!file) throw new Error(headWords().noFile);
      const scale = this.scale === 'percent' ? 'per cent' : 'fraction';
      const said = this.scale ? { scale: scale as 'per cent' | 'fraction' } : {};
      // A tile's sheet for this head is for the head's own geometry.
      return { from: 'file', name, fileName: file.name, text: await file.text(), geometry: '45/0', ...said };
    }
    const text = this.renderRoot.querySelector<TlField>('.sheet')?.value ?? '';
    const { numbers } = readNumberList(text);
    if (numbers.length === 1) {
      const factor = this.scale === 'percent' ? 0.01 : 1;
      return { from: 'number', name, reflectance: numbers[0]! * factor };
    }
    const pairs = readPairs(text);
    return {
      from: 'sheet',
      name,
      wavelengths: [...pairs.wavelengths],
      values: [...pairs.values],
      ...(this.scale ? { scale: this.scale } : {}),
    };
  }
}
define('tl-enter-tile', TlEnterTile);

declare global {
  interface HTMLElementTagNameMap {
    'tl-enter-tile': TlEnterTile;
  }
}
