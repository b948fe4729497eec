import { css, html, nothing } from 'lit';
import type { CheckAnswer } from '../../../../server/api/checks.ts';
import type { TakeReading, TypedReading } from '../../../../server/api/readings.ts';
import { GRID_NM } from '../../../../src/colour/grid.ts';
import { splitDifference } from '../../../../src/mix/match/difference.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { onThisScreen } from '../../design/patch.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import '../../parts/compare.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { checksWords } from '../../text/checks.ts';
import { splitWords } from '../../text/differences.ts';
import { channelWavelengths } from '../constants/channels.ts';
import '../ladder/file-entry.ts';
import type { FileReading } from '../ladder/file-entry.ts';
import '../ladder/typed-entry.ts';
import { recipeWords } from './recipe-words.ts';
import { said } from '../../text/said.ts';

/** One check: its recipe, predicted beside measured, and what the difference is made of. Sends `tl-read`, `tl-away`. */
export class TlCheckCard extends TlElement {
  static override properties = {
    check: { attribute: false },
    profile: { attribute: false },
    headReady: { type: Boolean },
    busy: { type: Boolean },
    findings: { attribute: false },
  };
  declare check: CheckAnswer;
  declare profile: PaletteProfile | undefined;
  declare headReady: boolean;
  declare busy: boolean;
  /** Sentences about the last reading. */
  declare findings: readonly string[];

  static override styles = [
    TlElement.styles,
    css`
      :host {
        border-block-start: var(--edge);
        padding-block-start: var(--s2);
      }
      header p {
        margin-block-start: 2px;
      }
      .split {
        font-weight: 650;
      }
      details > * + * {
        margin-block-start: var(--s2);
      }
      :host {
        break-inside: avoid;
      }
    `,
  ];

  constructor() {
    super();
    this.profile = undefined;
    this.headReady = false;
    this.busy = false;
    this.findings = [];
  }

  override render() {
    const t = checksWords();
    const { check } = this;
    return html`<article class="stack">
      <header>
        <h2>${check.title}</h2>
        <p>${recipeWords(check.masses, this.profile)}</p>
      </header>
      ${this.findings.map((f) => html`<tl-notice live>${f}</tl-notice>`)}
      ${check.result ? this.#result(check.result) : html`<p>${said(check.sentence) || t.waiting}</p>`}
      ${
        check.result
          ? html`<details class="no-print">
              <summary>${t.again}</summary>
              ${this.#entries()}
            </details>`
          : this.#entries()
      }
    </article>`;
  }

  #result(result: NonNullable<CheckAnswer['result']>) {
    const t = checksWords();
    const predicted = patchOfAnswer(result.predictedColour);
    const measured = patchOfAnswer(result.measuredColour);
    const split = splitDifference(predicted.lab, measured.lab, measured.value - predicted.value);
    const nm = channelWavelengths(result.channels);
    return html`<tl-compare
        .patches=${[predicted, measured]}
        .names=${[t.predicted, t.measured]}
        .difference=${result.deltaE00}
      ></tl-compare>
      <p class="split">${t.split}: ${splitWords(split)}.</p>
      ${result.inside95 ? html`<p>${t.inside}</p>` : html`<tl-notice kind="warning">${t.outside}</tl-notice>`}
      <details
        class="no-print"
        @toggle=${() => void import('../../charts/reflectance-chart.ts').catch(() => undefined)}
      >
        <summary>${t.more}</summary>
        <tl-reflectance-chart
          heading=${t.curve}
          summary=${t.curveSays(this.check.title)}
          .series=${[
            {
              label: t.predicted,
              paint: onThisScreen(predicted.lab).css,
              curve: {
                nm: GRID_NM,
                r: result.predicted.value,
                low: result.predicted.low,
                high: result.predicted.high,
              },
            },
            ...(nm
              ? [
                  {
                    label: t.measured,
                    paint: onThisScreen(measured.lab).css,
                    points: { nm, r: result.measured },
                  },
                ]
              : []),
          ]}
        ></tl-reflectance-chart>
      </details>`;
  }

  #entries() {
    const t = checksWords();
    const take = (reading: TakeReading): void => {
      this.dispatchEvent(
        new CustomEvent<{ id: string; take: TakeReading }>('tl-read', {
          detail: { id: this.check.id, take: reading },
          bubbles: true,
        }),
      );
    };
    return html`<div class="no-print">
      <div class="row">
        ${
          this.headReady
            ? html`<button type="button" ?disabled=${this.busy} @click=${() => take({ source: 'head' })}>
                ${t.read}
              </button>`
            : nothing
        }
        <button
          type="button"
          class="quiet"
          @click=${() => this.dispatchEvent(new CustomEvent<string>('tl-away', { detail: this.check.id, bubbles: true }))}
        >
          ${t.away}
        </button>
      </div>
      <details>
        <summary>${t.typed}</summary>
        <tl-typed-entry
          label=${t.take}
          .busy=${this.busy}
          @tl-typed-reading=${(e: CustomEvent<TypedReading>) => take({ source: 'typed', reading: e.detail })}
        ></tl-typed-entry>
      </details>
      <details>
        <summary>${t.file}</summary>
        <tl-file-entry
          label=${t.take}
          .busy=${this.busy}
          @tl-file-reading=${(e: CustomEvent<FileReading>) => take(e.detail)}
        ></tl-file-entry>
      </details>
    </div>`;
  }
}
define('tl-check-card', TlCheckCard);
