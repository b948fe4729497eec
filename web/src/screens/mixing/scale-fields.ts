import { css, html } from 'lit';
import type { Scale } from '../../../../src/mix/index.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ScaleController, changeScale } from '../../state/scale.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';

/** What the scale shows and the least that is put on it. Sends `tl-scale` once it is kept. */
export class TlScaleFields extends TlElement {
  readonly #scale = new ScaleController(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: var(--s2);
        align-items: start;
      }
    `,
  ];

  override render() {
    const t = mixingWords();
    const { resolution, smallestPour } = this.#scale.value;
    return html`${this.#field(t.scaleStep, 0.0001, resolution, 'resolution')}
    ${this.#field(t.smallestPour, 0.001, smallestPour, 'smallestPour')}`;
  }

  #field(label: string, min: number, value: number, key: keyof Scale) {
    return html`<tl-field
      kind="number"
      label=${label}
      unit="g"
      min=${min}
      max="10"
      decimals="4"
      .value=${plain(value)}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        const { number } = e.detail;
        if (number === undefined || number === value) return;
        changeScale({ [key]: number });
        this.dispatchEvent(new CustomEvent('tl-scale', { bubbles: true }));
      }}
    ></tl-field>`;
  }
}

/** As many decimals as the number has, two at least. */
function plain(value: number): string {
  const decimals = [2, 3, 4].find((d) => Math.abs(value - Number(value.toFixed(d))) < 1e-9) ?? 4;
  return num(value, decimals);
}
define('tl-scale-fields', TlScaleFields);
