import { css, html, nothing, svg } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { onThisScreen, patchName } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';
import { smallGrams } from '../../text/small-grams.ts';
import type { ValueStringAnswer } from '../../workers/limits-jobs.ts';

/** A value string as a row of drawdowns on one long card, each step with its recipe beneath. */
export class TlValueString extends TlElement {
  static override properties = { string: { attribute: false }, profile: { attribute: false } };
  declare string: ValueStringAnswer;
  declare profile: PaletteProfile;

  static override styles = [
    TlElement.styles,
    css`
      ol {
        list-style: none;
        padding: 0;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(7rem, 1fr));
        gap: var(--s3) 0;
        max-inline-size: none;
      }
      li {
        display: grid;
        gap: 6px;
        align-content: start;
        break-inside: avoid;
      }
      svg {
        display: block;
        inline-size: 100%;
        block-size: 9rem;
      }
      .says {
        padding-inline-end: 12px;
        line-height: 1.25;
      }
      b {
        font-size: var(--t-lead);
      }
      ul {
        list-style: none;
        padding: 0;
      }
      .small {
        display: block;
      }
      ul li {
        display: flex;
        justify-content: space-between;
        gap: 8px;
        font-size: var(--t-small);
        border-block-end: var(--rule);
      }
      ul li span:last-child {
        white-space: nowrap;
        font-weight: 650;
      }
      @media print {
        ol {
          grid-template-columns: repeat(5, 1fr);
          gap: 6mm 0;
        }
        svg {
          block-size: 26mm;
        }
      }
    `,
  ];

  override render() {
    const t = limitsWords();
    return html`<ol>
      ${this.string.steps.map((step) => {
        const mix = step.prediction;
        const label = mix ? patchName({ lab: mix.lab, value: mix.value }) : t.noStep;
        return html`<li>
          <svg viewBox="0 0 100 120" preserveAspectRatio="none" role="img" aria-label=${label}>
            <rect width="100.5" height="60.4" fill="#0b0b0b"></rect>
            <rect y="60" width="100.5" height="60" fill="#ececec"></rect>
            ${mix ? svg`<rect x="7" y="10" width="86" height="100" fill=${onThisScreen(mix.lab).css}></rect>` : nothing}
          </svg>
          <div class="says">
            <b>${num(step.value, 1)}</b>
            <span class="small" aria-hidden="true">${label}</span>
            ${step.ofFamily ? nothing : html`<span class="small">${t.off}</span>`}
            <ul>
              ${Object.entries(step.masses ?? {})
                .sort(([, p], [, q]) => q - p)
                .map(
                  ([id, grams]) =>
                    html`<li>
                      <span>${this.profile.tubes.find((tube) => tube.id === id)?.label ?? id}</span>
                      <span>${smallGrams(grams)}</span>
                    </li>`,
                )}
            </ul>
          </div>
        </li>`;
      })}
    </ol>`;
  }
}
define('tl-value-string', TlValueString);
