import { css, html, nothing } from 'lit';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { splitWords } from '../../text/differences.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';
import { said } from '../../text/said.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import type { ReachAnswer } from '../../workers/parts-jobs.ts';
import { type WantedColour, asWanted } from '../mixing/mix-state.ts';
import { labelIn } from '../mixing/pour-words.ts';
import '../mixing/wanted-form.ts';

/** Whether a given colour can be mixed from the tubes in use, by mixing it. */
export class TlInsidePanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    only: { attribute: false },
    headReady: { type: Boolean },
  };
  declare profile: PaletteProfile;
  declare only: readonly string[];
  declare headReady: boolean;
  readonly #found = new RemoteController<ReachAnswer | undefined>(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: block;
      }
    `,
  ];

  constructor() {
    super();
    this.headReady = false;
  }

  override updated(changed: Map<string, unknown>): void {
    // Other tubes reach other colours: the answer no longer holds.
    if (changed.has('only') && changed.get('only') !== undefined && this.#found.value)
      this.#found.set(undefined);
  }

  override render() {
    const t = limitsWords();
    const found = this.#found.value;
    return html`<section class="stack">
      <h2>${t.inside}</h2>
      <tl-wanted-form
        .headReady=${this.headReady}
        .action=${t.insideAsk}
        @tl-wanted=${(e: CustomEvent<WantedColour | undefined>) => void this.#ask(e.detail)}
      ></tl-wanted-form>
      <div aria-live="polite">
        ${this.#found.error ? html`<tl-notice kind="error">${said(this.#found.error.message)}</tl-notice>` : nothing}
        ${found ? this.#says(found) : nothing}
      </div>
    </section>`;
  }

  #says({ inside, deltaE00, split, shares }: ReachAnswer) {
    const t = limitsWords();
    const recipe = Object.entries(shares)
      .filter(([, share]) => share > 0.0005)
      .sort(([, p], [, q]) => q - p)
      .map(([id, share]) => `${labelIn(this.profile, id)} ${num(100 * share, 1)} %`)
      .join(', ');
    return html`<p>
        <b>${inside ? t.isInside : t.isOutside(num(deltaE00, 1), splitWords(split))}</b>
      </p>
      <p>${t.nearest(recipe)}</p>`;
  }

  async #ask(wanted: WantedColour | undefined): Promise<void> {
    if (!wanted) return;
    await this.#found.run((signal) =>
      searchBench.run('reach', { wanted: asWanted(wanted), only: this.only }, { signal }),
    );
  }
}
define('tl-inside-panel', TlInsidePanel);
