import { css, html } from 'lit';
import type { Reading } from '../../../../server/api/readings.ts';
import { patchName, patchOfColour } from '../../design/patch.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import { num, when } from '../../text/numbers.ts';
import { said } from '../../text/said.ts';

export interface Decision {
  readonly readingId: string;
  readonly keep: boolean;
}

/** Every reading of a rung, what became of it and why; the painter has the last word on each. */
export class TlReadingsList extends TlElement {
  static override properties = { readings: { attribute: false }, name: { type: String } };
  declare readings: readonly Reading[];
  declare name: string;

  static override styles = [
    TlElement.styles,
    css`
      button {
        min-block-size: 40px;
        padding-block: 4px;
      }
    `,
  ];

  constructor() {
    super();
    this.readings = [];
    this.name = '';
  }

  override render() {
    const t = ladderWords();
    if (this.readings.length === 0)
      return html`<h2>${t.readings(this.name)}</h2>
        <p>${t.noReadings}</p>`;
    return html`<tl-table
      caption=${t.readings(this.name)}
      .columns=${[
        { heading: t.readingNumber, figures: true },
        { heading: t.state },
        { heading: t.colour },
        { heading: t.reason },
        { heading: t.time },
        { heading: '' },
      ]}
      .rows=${this.readings.map((r, i) => [
        num(i + 1, 0),
        r.over === 'opaque' ? t.states[r.state] : `${t.states[r.state]} · ${t.over[r.over]}`,
        r.colour ? patchName(patchOfColour(r.colour)) : '–',
        said(r.reason) || '–',
        when(r.takenAt),
        r.state === 'taken back'
          ? '–'
          : html`<button type="button" @click=${() => this.#decide(r)}>
              ${r.state === 'kept' ? t.sendBack : t.keepIt}
            </button>`,
      ])}
    ></tl-table>`;
  }

  #decide(reading: Reading): void {
    const detail: Decision = { readingId: reading.id, keep: reading.state !== 'kept' };
    this.dispatchEvent(new CustomEvent<Decision>('tl-decide', { detail, bubbles: true, composed: true }));
  }
}
define('tl-readings-list', TlReadingsList);
