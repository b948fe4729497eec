import { css, html } from 'lit';
import type { Instrument } from '../../../../server/api/instrument.ts';
import { call } from '../../api/call.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { setInstrument } from '../../state/bench-state.ts';
import { benchWords } from '../../text/bench.ts';
import { benchSays } from '../../text/findings.ts';
import { headWords } from '../../text/head.ts';

/** Pause between two looks at the white, ms: ten or more fall into the 20 s that tell. */
const EVERY_MS = 1500;

/** Whether the lamp has settled, by what the white does; it can be watched until it has. */
export class TlWarmUp extends TlElement {
  static override properties = { instrument: { attribute: false }, watching: { state: true } };
  declare instrument: Instrument | undefined;
  declare watching: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: contents;
      }
      @media (max-width: 34rem) {
        button {
          grid-column: 2;
          justify-self: start;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.instrument = undefined;
    this.watching = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watching = false;
  }

  override render() {
    const { instrument } = this;
    if (!instrument) return html``;
    const t = headWords();
    const { state, sentence } = instrument.warmUp;
    return html`<div>
        <h2>${benchWords().warmUp}: ${benchWords().warmStates[state]}</h2>
        <p>${benchSays(sentence)}</p>
      </div>
      <button
        type="button"
        aria-pressed=${this.watching}
        ?disabled=${!this.watching && instrument.state !== 'ready'}
        @click=${() => void this.#watch()}
      >
        ${this.watching ? t.settling : t.settle}
      </button>`;
  }

  async #watch(): Promise<void> {
    this.watching = !this.watching;
    while (this.watching && this.isConnected) {
      try {
        const seen = await call('watchWarmUp');
        setInstrument(seen);
        if (seen.warmUp.state === 'settled') this.watching = false;
        else await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
      } catch (cause) {
        this.watching = false;
        const detail = cause instanceof Error ? cause.message : String(cause);
        this.dispatchEvent(new CustomEvent<string>('tl-refused', { detail, bubbles: true, composed: true }));
      }
    }
  }
}
define('tl-warm-up', TlWarmUp);
