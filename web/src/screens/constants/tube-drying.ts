import { css, html, nothing } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { TubeFacts } from '../../../../server/api/tube-facts.ts';
import type { Lab } from '../../../../src/colour/lab.ts';
import { call } from '../../api/call.ts';
import { patchOfLab } from '../../design/patch.ts';
import '../../parts/drawdown.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { num } from '../../text/numbers.ts';
import { tubeFactsWords } from '../../text/tube-facts.ts';

type Drying = TubeFacts['drying'][number];

/** Least change of lightness or chroma that is put in words, CIELAB units. */
const WORTH_SAYING = 0.2;

/** The same films wet and dry, side by side, with the difference and what it is sure to. */
export class TlTubeDrying extends TlElement {
  static override properties = {
    drying: { attribute: false },
    ladder: { attribute: false },
    refusal: { state: true },
  };
  declare drying: readonly Drying[];
  /** The tube's own ladder, where it was read on this bench. */
  declare ladder: Ladder | undefined;
  declare refusal: string;

  static override styles = [
    TlElement.styles,
    css`
      ul {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr));
        gap: var(--s4) var(--s3);
        list-style: none;
        padding: 0;
        max-inline-size: none;
      }
      li {
        display: grid;
        gap: 6px;
        align-content: start;
      }
      .pair {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--s2);
        --card-ratio: 8 / 5;
      }
      .shift b {
        font-size: var(--t-lead);
      }
      tl-field {
        max-inline-size: 22rem;
      }
    `,
  ];

  constructor() {
    super();
    this.drying = [];
    this.ladder = undefined;
    this.refusal = '';
  }

  override render() {
    const t = tubeFactsWords();
    const { ladder } = this;
    return html`<div class="stack">
      ${
        this.drying.length > 0
          ? html`<ul>
              ${this.drying.map((d) => this.#film(d))}
            </ul>`
          : html`<p>${t.dryingHow}</p>`
      }
      ${
        ladder
          ? html`<tl-field
                class="no-print"
                kind="date"
                label=${t.pulled}
                help=${t.pulledHelp}
                error=${this.refusal}
                .value=${ladder.rungs[0]?.pulledOn ?? ''}
                @tl-change=${(e: CustomEvent<FieldChange>) => void this.#say(ladder, e.detail.text)}
              ></tl-field>
              <a class="no-print" href=${linkTo('ladder', ladder.tubeId)}>${t.toRung}</a>`
          : nothing
      }
    </div>`;
  }

  #film(d: Drying) {
    const t = tubeFactsWords();
    const day = (days: number | null): string => (days === null ? t.noDays : t.days(num(days, 0)));
    return html`<li>
      <b>${d.name}</b>
      <div class="pair">
        <tl-drawdown
          size="fill"
          heading="${t.wet}, ${day(d.wetDays)}"
          .patch=${patchOfLab(whole(d.wet))}
        ></tl-drawdown>
        <tl-drawdown
          size="fill"
          heading="${t.dry}, ${day(d.dryDays)}"
          .patch=${patchOfLab(whole(d.dry))}
        ></tl-drawdown>
      </div>
      <span class="shift"
        ><b>${num(d.deltaE00, 1)}</b> CIEDE2000, ${t.between(num(d.low, 1), num(d.high, 1))}:
        ${d.beyondNoise ? `${wayOf(d)}, ${t.beyond}` : t.within}</span
      >
    </li>`;
  }

  async #say(ladder: Ladder, pulledOn: string): Promise<void> {
    this.refusal = '';
    if (!/^\d{4}-\d\d-\d\d$/.test(pulledOn)) return;
    try {
      await call('sayPulled', { params: { ladderId: ladder.id }, body: { pulledOn } });
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  }
}

function whole({ L, a, b }: Drying['wet']): Lab {
  return { L, a, b, white: 'D65/10deg' };
}

function wayOf({ wet, dry }: Drying): string {
  const { way, and } = tubeFactsWords();
  const dL = dry.L - wet.L;
  const dC = Math.hypot(dry.a, dry.b) - Math.hypot(wet.a, wet.b);
  const parts = [
    ...(Math.abs(dL) >= WORTH_SAYING ? [dL > 0 ? way.lighter : way.darker] : []),
    ...(Math.abs(dC) >= WORTH_SAYING ? [dC > 0 ? way.more : way.greyer] : []),
  ];
  return parts.join(and) || way.same;
}

define('tl-tube-drying', TlTubeDrying);
