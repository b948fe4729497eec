import { css, html, nothing } from 'lit';
import type { Ladder } from '../../../../server/api/ladders.ts';
import { call } from '../../api/call.ts';
import '../../parts/findings.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { findingSays } from '../../text/findings.ts';
import { ladderWords } from '../../text/ladder.ts';
import { rungName } from './target.ts';
import { adviceSays } from '../../text/advice.ts';

/** After the readings: which rung disagrees with its weighing, and what one more reading would buy. */
export class TlLadderAfter extends TlElement {
  static override properties = { ladder: { attribute: false } };
  declare ladder: Ladder | undefined;
  /** Worked out between rungs, before any fit of the palette. */
  readonly #between = new RemoteController<Ladder['suggestions']>(this);
  #asked = '';

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

  /** From the second rung on a ladder can be asked what the next would buy; a fit says it better, and once. */
  override willUpdate(): void {
    const { ladder } = this;
    if (!ladder) return;
    const done = ladder.rungs.filter((rung) => rung.done);
    const between = ladder.suggestions.length === 0 && done.length >= 2 && done.length < ladder.rungs.length;
    const key = between ? `${ladder.id} ${done.map((rung) => rung.id).join(' ')}` : '';
    if (key === this.#asked) return;
    this.#asked = key;
    if (!between) return this.#between.set([]);
    void this.#between.run((signal) => call('getLadderAdvice', { params: { ladderId: ladder.id }, signal }));
  }

  override render() {
    const { ladder } = this;
    if (!ladder) return nothing;
    const t = ladderWords();
    const suggestions = ladder.suggestions.length > 0 ? ladder.suggestions : (this.#between.value ?? []);
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
        suggestions.length > 0
          ? html`<section class="stack">
              <h2>${t.suggestions}</h2>
              <ul>
                ${suggestions.map((s) => html`<li>${adviceSays(s)}</li>`)}
              </ul>
            </section>`
          : nothing
      }
    `;
  }
}
define('tl-ladder-after', TlLadderAfter);
