import { css, html, nothing } from 'lit';
import type { Ladder, Rung } from '../../../../server/api/ladders.ts';
import '../../parts/field.ts';
import type { TlField } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num, parseNumber } from '../../text/numbers.ts';

/** Grams in letters read from the scale's side, with room for what the scale really showed. */
export class TlWeighPanel extends TlElement {
  static override properties = {
    ladder: { attribute: false },
    rung: { attribute: false },
    changed: { state: true },
  };
  declare ladder: Ladder | undefined;
  declare rung: Rung | undefined;
  declare changed: boolean;

  static override styles = [
    TlElement.styles,
    css`
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
        max-inline-size: none;
        display: grid;
        gap: var(--s2);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) minmax(9rem, 13rem);
        gap: 4px var(--s3);
        align-items: end;
        border-block-start: var(--edge);
        padding-block-start: 10px;
      }
      .what {
        font-size: var(--t-lead);
        font-weight: 650;
        overflow-wrap: anywhere;
      }
      .grams {
        font-size: clamp(2.25rem, 6vw, 4.5rem);
        font-weight: 750;
        line-height: 1;
        letter-spacing: -0.02em;
      }
      @media (max-width: 34rem) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  constructor() {
    super();
    this.ladder = undefined;
    this.rung = undefined;
    this.changed = false;
  }

  /** Grams as written, in the order of the parts; undefined when one of them is no number (and says so). */
  get grams(): readonly number[] | undefined {
    const fields = [...this.renderRoot.querySelectorAll<TlField>('tl-field')];
    const bad = fields.filter((f) => !f.check());
    if (bad.length > 0) {
      bad[0]?.focus();
      return undefined;
    }
    return fields.map((f) => parseNumber(f.value) ?? 0);
  }

  override render() {
    const { ladder, rung } = this;
    if (!ladder || !rung) return nothing;
    const t = ladderWords();
    const step = ladder.plan.scaleResolution;
    const decimals = Math.max(0, Math.round(-Math.log10(step)));
    return html`<ol>
      ${rung.parts.map(
        (part) =>
          html`<li>
            <div>
              <div class="what">${part.label}</div>
              <div class="grams">${grams(part.plannedGrams, step)}</div>
            </div>
            <tl-field
              kind="number"
              required
              unit="g"
              .min=${step / 10}
              max="100000"
              label=${t.weighed}
              .value=${num(part.weighedGrams ?? part.plannedGrams, decimals)}
              @tl-change=${this.#typed}
            ></tl-field>
          </li>`,
      )}
    </ol>`;
  }

  readonly #typed = (): void => {
    this.changed = true;
    this.dispatchEvent(new CustomEvent('tl-typed', { bubbles: true, composed: true }));
  };
}
define('tl-weigh-panel', TlWeighPanel);
