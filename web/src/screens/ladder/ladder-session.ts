import { html, nothing } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { Tube } from '../../../../server/api/tubes.ts';
import { EventsController } from '../../api/events.ts';
import type { TlNext } from '../../parts/next-step.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { goTo, linkTo } from '../../shell/route.ts';
import { BenchState } from '../../state/bench-state.ts';
import { ladderWords } from '../../text/ladder.ts';
import { benchWords } from '../../text/bench.ts';
import { type StepName, isOn, neededStep } from '../bench/bench-steps.ts';
import { AnyKey } from './any-key.ts';
import { farWords, nearWords } from './far-words.ts';
import { FitRun } from './fit-run.ts';
import { HeadButton, buttonTarget } from './head-button.ts';
import './ladder-after.ts';
import { type How, LadderHand } from './ladder-hand.ts';
import type { TlOtherWays, Way } from './other-ways.ts';
import './other-ways.ts';
import type { Decision } from './readings-list.ts';
import './readings-list.ts';
import './rung-strip.ts';
import { sessionStyles } from './session-styles.ts';
import { rungName, type Target, targetName, targetOf } from './target.ts';
import type { TlWeighPanel } from './weigh-panel.ts';
import './weigh-panel.ts';
import { said } from '../../text/said.ts';

/** A ladder being read: one thing at a time, any key, nothing lost. */
export class TlLadderSession extends TlElement {
  static override properties = {
    ladder: { attribute: false },
    tube: { attribute: false },
    chosen: { state: true },
    weighing: { state: true },
    way: { state: true },
    ownGrams: { state: true },
  };
  declare ladder: Ladder;
  declare tube: Tube;
  /** A rung the painter chose to read again. */
  declare chosen: string | undefined;
  /** A rung the painter chose to weigh again. */
  declare weighing: string | undefined;
  declare way: Way;
  declare ownGrams: boolean;

  static override styles = [TlElement.styles, sessionStyles];
  readonly #bench = new BenchState(this);
  readonly #fit = new FitRun(this);
  readonly #hand = new LadderHand(this);
  readonly #button = new HeadButton(this, () =>
    this.#headReady && !this.#weighRung ? buttonTarget(this.#now, this.#target) : undefined,
  );

  constructor() {
    super();
    this.chosen = undefined;
    this.weighing = undefined;
    this.way = 'head';
    this.ownGrams = false;
    new AnyKey(
      this,
      // A weighing is confirmed on purpose, not by a knee on the pedal.
      (key) => {
        if (!this.#weighRung || key === 'Enter' || key === ' ') void this.#press();
      },
      () => void this.#hand.undo(),
    );
    new EventsController(this, {
      taken: (event) => {
        if (event.ladderId !== this.ladder.id || this.#hand.busy) return;
        void this.#hand.pressed(event);
      },
    });
  }

  override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('ladder')) this.#hand.receive(this.ladder);
  }

  get #now(): Ladder {
    return this.#hand.ladder ?? this.ladder;
  }
  get #target(): Target | undefined {
    return targetOf(this.#now, this.chosen);
  }
  get #weighRung() {
    const { next, rungs } = this.#now;
    const asked = this.chosen === undefined && next.action === 'weigh' ? next.rungId : undefined;
    const id = this.weighing ?? asked;
    return rungs.find((r) => r.id === id);
  }
  get #headReady(): boolean {
    return this.#bench.value?.instrument.readyToRead === true && this.#now.next.action !== 'calibrate';
  }
  /** What the head is to be set on before the next reading, when it is on and that is what comes next. */
  get #setting(): StepName | undefined {
    const instrument = this.#bench.value?.instrument;
    if (this.#now.next.action !== 'calibrate' || this.way !== 'head' || !isOn(instrument)) return undefined;
    return neededStep(instrument) ?? 'white tile';
  }

  override render() {
    const t = ladderWords();
    const ladder = this.#now;
    const weigh = this.#weighRung;
    const target = weigh ? undefined : this.#target;
    const lost = this.#bench.value?.instrument.state === 'lost';
    const rung = target?.kind === 'rung' ? target.rung : undefined;
    const { refusal } = this.#hand;
    return html`
      <div class="table">
        <section class="step" aria-label=${t.title}>
          <p class="far" aria-live="polite">
            ${farWords(ladder, target, weigh, this.chosen !== undefined, this.tube.role)}
          </p>
          <p class="near">${nearWords(ladder, target, weigh)}</p>
          ${lost ? html`<tl-notice kind="warning" live>${t.lost}</tl-notice>` : nothing}
          ${
            weigh
              ? keyed(
                  weigh.id,
                  html`<tl-weigh-panel
                    .ladder=${ladder}
                    .rung=${weigh}
                    @tl-typed=${() => (this.ownGrams = true)}
                  ></tl-weigh-panel>`,
                )
              : nothing
          }
          ${this.#next(target)} ${this.#said()}
          ${refusal ? html`<tl-notice kind="error" live>${refusal}</tl-notice>` : nothing}
        </section>
        <section class="stack">
          <tl-rung-strip
            .ladder=${ladder}
            at=${rung?.id ?? weigh?.id ?? ''}
            @tl-choose=${(e: CustomEvent<string>) => this.#choose(e.detail)}
          ></tl-rung-strip>
          ${this.#back(ladder, rung)}
        </section>
      </div>
      ${
        target
          ? html`<tl-other-ways
              name=${targetName(target)}
              way=${this.way}
              .question=${this.#hand.question}
              ?busy=${this.#hand.busy}
              @tl-way=${(e: CustomEvent<Way>) => (this.way = e.detail)}
              @tl-take=${(e: CustomEvent<How>) => void this.#take(target, e.detail)}
            ></tl-other-ways>`
          : nothing
      }
      ${
        rung
          ? html`<tl-readings-list
              name=${rungName(rung)}
              .readings=${rung.readings}
              @tl-decide=${(e: CustomEvent<Decision>) =>
                void this.#hand.decide(e.detail.readingId, e.detail.keep)}
            ></tl-readings-list>`
          : nothing
      }
      <tl-ladder-after .ladder=${ladder}></tl-ladder-after>
    `;
  }

  #back(ladder: Ladder, rung: Ladder['rungs'][number] | undefined) {
    const t = ladderWords();
    return html`<div class="row">
      <button
        type="button"
        ?disabled=${!ladder.undo}
        title=${ladder.undo ? t.undoWhat(said(ladder.undo)) : t.undo}
        @click=${() => void this.#hand.undo()}
      >
        ${t.undo} <span class="small">(${t.undoKey})</span>
      </button>
      <button type="button" ?disabled=${!ladder.redo} @click=${() => void this.#hand.redo()}>
        ${t.redo}
      </button>
      ${
        this.chosen && rung && rung.parts.length > 1
          ? html`<button type="button" class="quiet" @click=${() => (this.weighing = rung.id)}>
              ${t.weighAgain}
            </button>`
          : nothing
      }
      ${
        this.chosen || this.weighing
          ? html`<button type="button" class="quiet" @click=${() => this.#choose(undefined)}>
              ${t.backToNext}
            </button>`
          : nothing
      }
    </div>`;
  }

  #next(target: Target | undefined) {
    const t = ladderWords();
    const { action } = this.#now.next;
    const { busy } = this.#hand;
    const press = (): void => void this.#press();
    if (this.#weighRung) {
      const label = this.ownGrams ? t.weighedOwn : t.weighedAsPlanned;
      return html`<tl-next far label=${label} hint=${t.weighedHint} ?busy=${busy} @click=${press}></tl-next>`;
    }
    const fit = this.#fit.running;
    if (fit) {
      return html`<tl-progress
        label=${said(fit.progress.sentence) || t.fitting}
        share=${fit.progress.done}
      ></tl-progress>`;
    }
    if (target && this.way !== 'head') return nothing;
    const setting = this.#setting;
    if (setting) {
      const { read, how } = benchWords();
      return html`<tl-next
        far
        label=${busy ? `${t.reading} …` : read[setting]}
        hint=${how[setting]}
        ?busy=${busy}
        @click=${press}
      ></tl-next>`;
    }
    if (target && this.#headReady) {
      return html`<tl-next
        far
        label=${busy ? `${t.reading} …` : this.chosen ? t.again(targetName(target)) : t.readNow}
        hint=${this.chosen ? t.redoKey : this.#button.ready ? t.readKey : t.readKeyAlone}
        ?busy=${busy}
        @click=${press}
      ></tl-next>`;
    }
    if (action === 'fit' && this.tube.role === 'white') {
      return html`<tl-next far label=${t.nextTube} hint=${t.nextTubeHint} href=${linkTo('rack')}></tl-next>`;
    }
    if (action === 'fit')
      return html`<tl-next far label=${t.fitNow} ?busy=${busy} @click=${press}></tl-next>`;
    if (action === 'done' || action === 'measure more') {
      return html`<tl-next
        far
        label=${t.seeConstants}
        hint=${t.seeConstantsHint}
        href=${linkTo('constants', this.tube.id)}
      ></tl-next>`;
    }
    return html`<tl-next far label=${t.toBench} hint=${t.near.connect} href=${linkTo('bench')}></tl-next>`;
  }

  #said() {
    const { result } = this.#hand;
    // Its place is kept, so that nothing below it moves when the first answer comes.
    return html`<div class="said ${result?.kind ?? ''}" role="status">
      ${
        result
          ? html`<p class="verdict">${result.far}</p>
              <p>${result.why}</p>`
          : nothing
      }
    </div>`;
  }

  #choose(id: string | undefined): void {
    this.chosen = id === this.chosen ? undefined : id;
    this.weighing = undefined;
    this.#hand.forget();
    const rung = this.#now.rungs.find((r) => r.id === this.chosen);
    if (rung && !rung.weighed) {
      this.chosen = undefined;
      this.weighing = rung.id;
    }
    void this.focusNext();
  }

  /** The hand finds the next step where it stands. */
  async focusNext(): Promise<void> {
    await this.updateComplete;
    await this.renderRoot.querySelector<TlNext>('.step tl-next')?.take();
  }

  /** Any key, the foot pedal, the button: whatever the next step is. */
  async #press(): Promise<void> {
    if (this.#hand.busy || this.#fit.running) return;
    const weigh = this.#weighRung;
    const target = this.#target;
    if (weigh) {
      const grams = this.renderRoot.querySelector<TlWeighPanel>('tl-weigh-panel')?.grams;
      if (!grams) return;
      await this.#hand.weigh(weigh, grams);
      this.weighing = undefined;
      this.ownGrams = false;
    } else if (this.#setting) {
      await this.#hand.set(this.#setting);
      this.dispatchEvent(new CustomEvent('tl-again', { bubbles: true, composed: true }));
    } else if (target && this.way === 'head' && this.#headReady) {
      await this.#take(target, { source: 'head' });
    } else if (!target && this.#now.next.action === 'fit' && this.tube.role !== 'white') {
      await this.#fitNow();
    } else return;
    await this.focusNext();
  }

  async #take(target: Target, how: How): Promise<void> {
    const stored = await this.#hand.take(target, how);
    if (stored) this.renderRoot.querySelector<TlOtherWays>('tl-other-ways')?.clear();
  }

  async #fitNow(): Promise<void> {
    this.#hand.forget();
    try {
      const fit = await this.#fit.start();
      if (fit.state === 'complete') goTo('constants', this.tube.id);
      else this.#hand.refuse(said(fit.sentence));
    } catch (cause) {
      this.#hand.refuse(cause instanceof Error ? cause.message : String(cause));
    }
  }
}
define('tl-ladder-session', TlLadderSession);
