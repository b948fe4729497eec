import { css, html, nothing, svg } from 'lit';
import { type Masses, type MixPrediction, type Pour } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { onThisScreen, patchName } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { limitsWords } from '../../text/limits.ts';
import { sheetWords } from '../../text/sheets.ts';
import { grams, num } from '../../text/numbers.ts';
import { smallGrams } from '../../text/small-grams.ts';
import { ScaleController } from '../../state/scale.ts';
import type { ValueStringAnswer } from '../../workers/limits-jobs.ts';
import type { HighlightsAnswer } from '../../workers/parts-jobs.ts';
import { type Weighing, firstMixes, labelIn, pourNotes, weighings } from '../mixing/pour-words.ts';

/** Highlights worth a card each. */
const SHOWN = 4;

/** A value string as a row of drawdowns on one long card, each step with its recipe beneath. */
export class TlValueString extends TlElement {
  static override properties = {
    string: { attribute: false },
    profile: { attribute: false },
    highlights: { attribute: false },
  };
  declare string: ValueStringAnswer;
  declare profile: PaletteProfile;
  /** Near-whites touched with a warm, after the string. */
  declare highlights: HighlightsAnswer;
  readonly #scale = new ScaleController(this);

  static override styles = [
    TlElement.styles,
    css`
      ol {
        list-style: none;
        padding: 0;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(7.6rem, 1fr));
        gap: var(--s3) 0;
        max-inline-size: none;
      }
      ol.wide {
        grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr));
      }
      dl {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 2px var(--s2);
        margin-block: var(--s2) 0;
        font-size: var(--t-small);
      }
      dt {
        font-weight: 650;
      }
      dd {
        margin: 0;
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
      h3 {
        margin-block-start: var(--s4);
      }
      .paint {
        display: none;
      }
      .how {
        margin-block: 4px var(--s2);
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
          gap: 4mm 0;
        }
        ol.wide {
          grid-template-columns: repeat(4, 1fr);
        }
        svg {
          block-size: 12mm;
        }
        dl {
          margin-block: 2mm 0;
        }
        .whole {
          break-inside: avoid;
        }
        h3 {
          margin-block-start: 4mm;
        }
        /* The step itself, painted under its picture, edge to edge with its neighbours. */
        .paint {
          display: block;
          block-size: 15mm;
          padding: 1mm;
          border: 0.5pt dashed #000;
          font-size: var(--t-small);
          line-height: 1;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.highlights = [];
  }

  override render() {
    const t = limitsWords();
    const shown = this.highlights.slice(0, SHOWN);
    return html`<ol aria-label=${t.string}>
        ${this.string.steps.map((step) =>
          this.#step(num(step.value, 1), step, step.ofFamily ? '' : t.off, step.prediction),
        )}
      </ol>
      ${this.#notes(this.string.steps.map(({ value, pour }) => ({ of: num(value, 1), pour })))}
      ${
        shown.length > 0
          ? html`<section class="whole">
              <h3>${t.highlights}</h3>
              <p class="how">${t.highlightsHow}</p>
              <ol class="wide" aria-label=${t.highlights}>
                ${shown.map((h) =>
                  this.#step(labelIn(this.profile, h.warm), h, t.lost(num(h.valueLost, 2)), h.prediction),
                )}
              </ol>
              ${this.#notes(shown.map(({ warm, pour }) => ({ of: labelIn(this.profile, warm), pour })))}
            </section>`
          : nothing
      }`;
  }

  #step(
    heading: string,
    { masses, pour }: { readonly masses?: Masses; readonly pour?: Pour },
    note: string,
    mix: MixPrediction | undefined,
  ) {
    const t = limitsWords();
    // What is drawn is what comes out of the scale.
    const made = pour ? (pour.preTint ?? pour).prediction : mix;
    const label = made ? patchName({ lab: made.lab, value: made.value }) : t.noStep;
    return html`<li>
      <svg viewBox="0 0 100 120" preserveAspectRatio="none" role="img" aria-label=${label}>
        <rect width="100.5" height="60.4" fill="#0b0b0b"></rect>
        <rect y="60" width="100.5" height="60" fill="#ececec"></rect>
        ${made ? svg`<rect x="7" y="10" width="86" height="100" fill=${onThisScreen(made.lab).css}></rect>` : nothing}
      </svg>
      <div class="paint" aria-hidden="true">${sheetWords().paint}</div>
      <div class="says">
        <b>${heading}</b>
        <span class="small" aria-hidden="true">${made ? t.leaning(num(made.lean, 1)) : label}</span>
        ${made ? html`<span class="small">${t.within(num(made.interval.radius95, 1))}</span>` : nothing}
        ${note ? html`<span class="small">${note}</span>` : nothing} ${this.#grams(masses, pour)}
      </div>
    </li>`;
  }

  #grams(masses: Masses | undefined, pour: Pour | undefined) {
    const { resolution } = this.#scale.value;
    const rows: readonly Weighing[] = pour
      ? weighings(pour, this.profile)
      : Object.entries(masses ?? {})
          .sort(([, p], [, q]) => q - p)
          .map(([id, g]) => ({ what: labelIn(this.profile, id), grams: g }));
    return html`${firstMixes(pour, this.profile, resolution).map((first) => html`<span class="small">${first}</span>`)}
      <ul>
        ${rows.map(
          ({ what, grams: g }) =>
            html`<li><span>${what}</span><span>${pour ? grams(g, resolution) : smallGrams(g)}</span></li>`,
        )}
      </ul>`;
  }

  /** What was left out of each, under the whole row: a sentence does not fit a column one drawdown wide. */
  #notes(made: readonly { readonly of: string; readonly pour?: Pour | undefined }[]) {
    const notes = made.flatMap(({ of, pour }) =>
      (pour ? pourNotes(pour) : []).map(
        (note) =>
          html`<dt>${of}</dt>
            <dd>${note}</dd>`,
      ),
    );
    return notes.length > 0 ? html`<dl>${notes}</dl>` : nothing;
  }
}
define('tl-value-string', TlValueString);
