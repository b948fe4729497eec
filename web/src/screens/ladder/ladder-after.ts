import { css, html, nothing } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import '../../parts/findings.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { findingSays } from '../../text/findings.ts';
import { ladderWords } from '../../text/ladder.ts';
import { rungName } from './target.ts';
import { adviceSays } from '../../text/advice.ts';

/** After the readings: which rung disagrees with its weighing, and what one more reading would buy. */
export class TlLadderAfter extends TlElement {
  static override properties = { ladder: { attribute: false } };
  declare ladder: Ladder | undefined;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s4);
      }
      :host > div:empty {
        display: none;
      }
      ul {
        list-style: none;
        padding: 0;
        display: grid;
      }
      li {
        border-block-start: var(--rule);
        padding-block: 10px;
      }
      b {
        display: inline-block;
        min-inline-size: 6rem;
      }
    `,
  ];

  constructor() {
    super();
    this.ladder = undefined;
  }

  override render() {
    const { ladder } = this;
    if (!ladder) return nothing;
    const t = ladderWords();
    const judged = ladder.rungs.some((r) => r.verdict !== null);
    const findings = ladder.rungs.flatMap((r) => r.findings.map((f) => ({ rung: r, f })));
    return html`
      ${
        judged
          ? html`<section class="stack">
              <h2>${t.verdicts}</h2>
              <ul>
                ${ladder.rungs.map((r) => html`<li><b>${rungName(r)}</b> ${r.verdict ?? t.agrees}</li>`)}
              </ul>
            </section>`
          : nothing
      }
      ${
        findings.length > 0
          ? html`<tl-findings
              .findings=${findings.map(({ rung, f }) => ({ ...f, code: '', sentence: `${rungName(rung)}: ${findingSays(f)}` }))}
            ></tl-findings>`
          : nothing
      }
      ${
        ladder.suggestions.length > 0
          ? html`<section class="stack">
              <h2>${t.suggestions}</h2>
              <ul>
                ${ladder.suggestions.map((s) => html`<li>${adviceSays(s)}</li>`)}
              </ul>
            </section>`
          : nothing
      }
    `;
  }
}
define('tl-ladder-after', TlLadderAfter);
