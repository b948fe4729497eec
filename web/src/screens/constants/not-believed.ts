import { html, nothing } from 'lit';
import type { TubeFitAnswer } from '../../../../server/api/fits.ts';
import type { Ladder } from '../../../../server/api/ladders.ts';
import { call } from '../../api/call.ts';
import '../../parts/notice.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { notBelievedSays } from '../../text/not-believed.ts';
import { tubeFactsWords } from '../../text/tube-facts.ts';

type NotBelieved = TubeFitAnswer['notBelieved'][number];

/** Rungs that were left out of the fit, why, and one press that mends what can be mended here. */
export class TlNotBelieved extends TlElement {
  static override properties = {
    rungs: { attribute: false },
    ladder: { attribute: false },
    busy: { state: true },
    refusal: { state: true },
  };
  declare rungs: readonly NotBelieved[];
  declare ladder: Ladder | undefined;
  declare busy: boolean;
  declare refusal: string;

  constructor() {
    super();
    this.rungs = [];
    this.ladder = undefined;
    this.busy = false;
    this.refusal = '';
  }

  override render() {
    const t = tubeFactsWords();
    return html`<div class="stack">
      ${this.rungs.map((rung) => {
        const mend = this.#turnable(rung);
        return html`<tl-notice kind="warning" heading=${rung.name}>
          <p>${notBelievedSays(rung)}</p>
          ${
            mend
              ? html`<button
                  type="button"
                  ?disabled=${this.busy}
                  @click=${() => void this.#exchange(mend.ladderId, mend.rungId, mend.grams)}
                >
                  ${this.busy ? t.exchanging : t.exchange}
                </button>`
              : this.ladder
                ? html`<p><a href=${linkTo('ladder', this.ladder.tubeId)}>${t.toRung}</a></p>`
                : nothing
          }
        </tl-notice>`;
      })}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
    </div>`;
  }

  /** Grams the other way round, where the rung stands on this bench and is made of two pours. */
  #turnable({ swapped, rungId }: NotBelieved) {
    const rung = swapped ? this.ladder?.rungs.find((r) => r.id === rungId) : undefined;
    const grams = rung?.parts.flatMap((p) => p.weighedGrams ?? []);
    if (!this.ladder || !rung || grams?.length !== 2) return undefined;
    return { ladderId: this.ladder.id, rungId: rung.id, grams: grams.toReversed() };
  }

  async #exchange(ladderId: string, rungId: string, grams: number[]): Promise<void> {
    this.busy = true;
    this.refusal = '';
    try {
      await call('weighRung', { params: { ladderId, rungId }, body: { grams } });
      // The screen draws itself again when the profile of this fit is there.
      await call('startFit', { body: {} });
      say(tubeFactsWords().exchanged);
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
      this.busy = false;
    }
  }
}

define('tl-not-believed', TlNotBelieved);
