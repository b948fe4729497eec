import { css, html, nothing } from 'lit';
import { type Masses, NUDGES, type Nudge } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { ScaleController } from '../../state/scale.ts';
import { mixingWords } from '../../text/mixing.ts';
import { grams, num } from '../../text/numbers.ts';
import type { NudgeAnswer } from '../../workers/nudge-job.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import { changeTable } from './mix-state.ts';
import { labelIn } from './pour-words.ts';

/** One just-visible step: warmer, cooler, lighter, darker, greyer. Says what to add, then puts it in when asked. */
export class TlNudgePanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    masses: { attribute: false },
    asked: { state: true },
  };
  declare profile: PaletteProfile;
  declare masses: Masses;
  declare asked: Nudge | undefined;
  #for: Masses | undefined;
  readonly #scale = new ScaleController(this);
  readonly #found = new RemoteController<NudgeAnswer | undefined>(this);

  static override styles = [
    TlElement.styles,
    css`
      .says {
        min-block-size: var(--target);
      }
    `,
  ];

  constructor() {
    super();
    this.asked = undefined;
  }

  override willUpdate(): void {
    if (this.#for && this.masses !== this.#for) {
      this.#for = undefined;
      this.asked = undefined;
    }
  }

  override render() {
    const t = mixingWords();
    const { asked } = this;
    return html`<section class="stack">
      <h2>${t.nudge}</h2>
      <p>${t.nudgeHow}</p>
      <div class="row">
        ${NUDGES.map(
          (nudge) =>
            html`<button type="button" aria-pressed=${asked === nudge} @click=${() => void this.#ask(nudge)}>
              ${t.nudges[nudge]}
            </button>`,
        )}
      </div>
      ${this.#found.error ? html`<tl-notice kind="error" live>${this.#found.error.message}</tl-notice>` : nothing}
      <div class="says row" aria-live="polite">${asked ? this.#says(asked) : nothing}</div>
    </section>`;
  }

  #says(asked: Nudge) {
    const t = mixingWords();
    if (this.#found.pending) return html`<tl-progress label=${t.finding}></tl-progress>`;
    const step = this.#found.value?.find(({ nudge }) => nudge === asked);
    if (!step) return html`<p>${t.nudgeNone}</p>`;
    const add = Object.entries(step.add).sort(([, p], [, q]) => q - p);
    return html`<b>${add.map(([id, g]) => `${num(g, 3)} g ${labelIn(this.profile, id)}`).join(', ')}</b>
      <button type="button" @click=${() => this.#putIn(step.add)}>${t.putIn}</button>
      ${this.#tooSmall(step.add)}`;
  }

  /** A pinch no scale holds still for says from which pile on it can be weighed: what is added grows with the pile. */
  #tooSmall(add: Masses) {
    const { smallestPour, resolution } = this.#scale.value;
    const least = Math.min(...Object.values(add));
    if (!(least < smallestPour)) return nothing;
    const pile = Object.values(this.masses).reduce((sum, g) => sum + g, 0);
    const from = Math.ceil((pile * smallestPour) / least);
    return html`<p class="small">
      ${mixingWords().nudgeSmall(grams(smallestPour, resolution), `${num(from, 0)} g`)}
    </p>`;
  }

  async #ask(nudge: Nudge): Promise<void> {
    this.asked = nudge;
    const { masses } = this;
    if (this.#for === masses) return;
    this.#for = masses;
    const used = Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0));
    await this.#found.run((signal) => searchBench.run('nudge', { masses: used }, { signal }));
  }

  #putIn(add: Masses): void {
    const masses = { ...this.masses };
    for (const [id, g] of Object.entries(add)) masses[id] = (masses[id] ?? 0) + g;
    changeTable({ masses });
  }
}
define('tl-nudge-panel', TlNudgePanel);
