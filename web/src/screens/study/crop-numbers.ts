import { css, html } from 'lit';
import type { Crop } from '../../../../src/study/index.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { fitted, wholeOf } from './crop-moves.ts';

/** A crop by its numbers. Sends `tl-crop`. */
export class TlCropNumbers extends TlElement {
  static override properties = { picture: { attribute: false }, crop: { attribute: false } };
  declare picture: { readonly width: number; readonly height: number };
  declare crop: Crop;

  static override styles = [
    TlElement.styles,
    css`
      .numbers {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr));
        gap: var(--s2);
      }
      summary {
        font-weight: 450;
      }
    `,
  ];

  override render() {
    const t = studyWords();
    const { crop, picture } = this;
    const px = (v: number): string => num(v, 0);
    return html`<details>
      <summary>${t.crop}: ${t.cropSays(px(crop.width), px(crop.height), px(crop.x), px(crop.y))}</summary>
      <div class="numbers">
        ${this.#field(t.left, 'x', picture.width)} ${this.#field(t.top, 'y', picture.height)}
        ${this.#field(t.width, 'width', picture.width)} ${this.#field(t.height, 'height', picture.height)}
      </div>
      <button type="button" class="quiet" @click=${() => this.#send(wholeOf(picture))}>${t.whole}</button>
    </details>`;
  }

  #field(label: string, key: keyof Crop, most: number) {
    return html`<tl-field
      kind="number"
      label=${label}
      unit="px"
      min="0"
      max=${most}
      .value=${num(this.crop[key], 0)}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        if (e.detail.number !== undefined)
          this.#send(fitted({ ...this.crop, [key]: e.detail.number }, this.picture));
      }}
    ></tl-field>`;
  }

  #send(detail: Crop): void {
    this.dispatchEvent(new CustomEvent<Crop>('tl-crop', { detail, bubbles: true }));
  }
}
define('tl-crop-numbers', TlCropNumbers);
