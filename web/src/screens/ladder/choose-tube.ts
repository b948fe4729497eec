import { css, html, nothing } from 'lit';
import type { Tube } from '../../../../server/api/tubes.ts';
import { patchOfColour } from '../../design/patch.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import '../../parts/tube-card.ts';
import { linkTo } from '../../shell/route.ts';
import { ladderWords } from '../../text/ladder.ts';
import { rackWords } from '../../text/rack.ts';

/** Which tube is on the table: large, one press each. */
export class TlChooseTube extends TlElement {
  static override properties = { tubes: { attribute: false } };
  declare tubes: readonly Tube[];

  static override styles = [
    TlElement.styles,
    css`
      ul {
        list-style: none;
        padding: 0;
        max-inline-size: none;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr));
        gap: var(--s3);
      }
      @media (max-width: 34rem) {
        ul {
          grid-template-columns: 1fr 1fr;
          gap: var(--s3) var(--s2);
        }
      }
      a {
        display: grid;
        gap: 8px;
        text-decoration: none;
        overflow-wrap: anywhere;
      }
      a:hover b {
        text-decoration: underline;
      }
      b {
        display: block;
        font-size: var(--t-lead);
      }
    `,
  ];

  constructor() {
    super();
    this.tubes = [];
  }

  override render() {
    const stages = rackWords().stages;
    return html`<ul aria-label=${ladderWords().chooseHeading}>
      ${this.tubes
        .filter((t) => !t.putAway)
        .map(
          (t) =>
            html`<li>
              <a href=${linkTo('ladder', t.id)}>
                <tl-tube-card
                  label=${t.label}
                  ?white=${t.role === 'white'}
                  .masstone=${t.known.masstone ? patchOfColour(t.known.masstone) : undefined}
                  .tint=${t.known.tint ? patchOfColour(t.known.tint) : undefined}
                ></tl-tube-card>
                <span
                  ><b>${t.label}</b>${stages[t.known.stage]}${
                    t.pigments.length > 0 ? html` · ${t.pigments.join(' ')}` : nothing
                  }</span
                >
              </a>
            </li>`,
        )}
    </ul>`;
  }
}
define('tl-choose-tube', TlChooseTube);
