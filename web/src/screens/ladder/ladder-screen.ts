import { css, html, nothing } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { Tube } from '../../../../server/api/tubes.ts';
import { type Answer, call } from '../../api/call.ts';
import { EventsController } from '../../api/events.ts';
import '../../parts/empty.ts';
import type { TlNext } from '../../parts/next-step.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { nextTube } from '../rack/next-tube.ts';
import { type Route, goTo, linkTo } from '../../shell/route.ts';
import { RemoteController } from '../../state/remote.ts';
import { ladderWords } from '../../text/ladder.ts';
import { grams, num } from '../../text/numbers.ts';
import './choose-tube.ts';
import './ladder-card.ts';
import type { TlLadderPlan } from './ladder-plan.ts';
import './ladder-plan.ts';
import type { TlLadderSession } from './ladder-session.ts';
import './ladder-session.ts';
import { said } from '../../text/said.ts';

interface OnTheTable {
  readonly tubes: readonly Tube[];
  readonly tube: Tube | undefined;
  readonly ladder: Ladder | undefined;
}

/** A tube's ladder: chosen, planned, read, fitted. `#/ladder/TUBE`; without a tube, the choice of one. */
export class TlLadderScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    plan: { state: true },
    planned: { state: true },
    busy: { state: true },
    refusal: { state: true },
  };
  declare route: Route | undefined;
  declare plan: Answer<'planLadder'> | undefined;
  /** A plan has been asked for and answered, well or not. */
  declare planned: boolean;
  declare busy: boolean;
  declare refusal: string;

  static override styles = [
    TlElement.styles,
    css`
      .session tl-ladder-card {
        display: none;
      }
      @media print {
        tl-ladder-session {
          display: none;
        }
        .session tl-ladder-card {
          display: grid;
        }
      }
    `,
  ];
  readonly #table = new RemoteController<OnTheTable>(this);
  #lock: { release(): Promise<void> } | undefined;
  /** What was pressed is gone: the hand is to find the next step, once it stands. */
  #handWaits = false;

  constructor() {
    super();
    this.route = undefined;
    this.plan = undefined;
    this.planned = false;
    this.busy = false;
    this.refusal = '';
    new EventsController(this, {
      // After a pulled cable or a closed lid everything is where it was: ask again.
      hello: () => this.#fetch(),
      ladder: ({ ladderId }) => {
        if (ladderId === this.#table.value?.ladder?.id) this.#fetch();
      },
      fit: ({ fit }) => {
        if (fit.state === 'complete') this.#fetch();
      },
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('visibilitychange', this.#seen);
    void this.#stayAwake();
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('visibilitychange', this.#seen);
    void this.#lock?.release();
  }

  readonly #seen = (): void => {
    if (document.visibilityState !== 'visible') return;
    this.#fetch();
    void this.#stayAwake();
  };

  /** Keeps the screen lit while a ladder is read, where the browser can. */
  async #stayAwake(): Promise<void> {
    try {
      this.#lock = await navigator.wakeLock?.request('screen');
    } catch {
      // Refused, by battery or by the browser; nothing depends on it.
    }
  }

  override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('route')) {
      this.#handWaits = changed.get('route') !== undefined;
      this.plan = undefined;
      this.planned = false;
      this.refusal = '';
      this.#fetch();
    }
  }

  override updated(): void {
    if (!this.#handWaits || this.#table.pending) return;
    const session = this.renderRoot.querySelector<TlLadderSession>('tl-ladder-session');
    const next = this.renderRoot.querySelector<TlNext>('tl-next');
    if (!session && (!next || next.disabled)) return;
    this.#handWaits = false;
    if (session) void session.focusNext();
    else void next?.take();
  }

  #fetch(): void {
    const tubeId = this.route?.args[0];
    void this.#table.run(async (signal) => {
      const tubes = await call('listTubes', { signal });
      const tube = tubes.find((x) => x.id === tubeId);
      if (!tube) return { tubes, tube, ladder: undefined };
      const ladders = await call('listLadders', { query: { tube: tube.id }, signal });
      const ladder = ladders.find((l) => l.state === 'open') ?? ladders.find((l) => l.state === 'complete');
      return { tubes, tube, ladder };
    });
  }

  override render() {
    const t = ladderWords();
    const table = this.#table.value;
    const error = this.refusal || this.#table.error?.message;
    const tube = table?.tube;
    const lead = this.#lead(table);
    return html`<tl-page
      sheet
      heading=${tube ? t.titleOf(tube.label) : t.title}
      lead=${lead}
      ?waiting=${!table || (tube !== undefined && !table.ladder && !this.planned && !error)}
      .terms=${['ladder', 'rung', 'masstone', 'tint', 'drawdown', 'card', 'swatch', 'reading']}
      .cautions=${t.cautions}
    >
      ${error ? html`<tl-notice kind="error" live>${error}</tl-notice>` : nothing}
      ${table ? this.#body(table) : nothing}
    </tl-page>`;
  }

  #startHint(tube: Tube): string {
    const t = ladderWords();
    const plan = this.plan?.plan;
    if (!plan) return '';
    const paint = grams(plan.tubeGrams, 0.1);
    return tube.role ? t.startWhiteHint(paint) : t.startHint(paint, grams(plan.whiteGrams, 0.1));
  }

  #lead(table: OnTheTable | undefined): string {
    const t = ladderWords();
    if (!table) return '';
    if (!table.tube) return t.chooseLead;
    const done = table.ladder?.progress;
    if (done) return t.progress(num(done.done, 0), num(done.of, 0));
    return table.tube.role ? t.planWhiteLead : t.planLead;
  }

  #body({ tubes, tube, ladder }: OnTheTable) {
    const t = ladderWords();
    if (tubes.length === 0) {
      return html`<tl-next slot="next" label=${t.toRack} hint=${t.toRackHint} href=${linkTo('rack')}></tl-next
        ><tl-empty heading=${t.noTubes}></tl-empty>`;
    }
    if (!tube) return html`${nextTube(tubes)}<tl-choose-tube .tubes=${tubes}></tl-choose-tube>`;
    if (ladder) return this.#session(tube, ladder);
    return keyed(
      tube.id,
      html`<tl-next
          slot="next"
          label=${t.start}
          hint=${this.#startHint(tube)}
          ?busy=${this.busy}
          ?disabled=${!this.plan}
          @click=${() => void this.#start()}
        ></tl-next>
        ${
          tube.cautions.length > 0
            ? html`<tl-notice kind="caution" heading=${tube.pigments.join(' ')}>
                ${tube.cautions.map((c) => html`<p>${said(c)}</p>`)}
              </tl-notice>`
            : nothing
        }
        <tl-ladder-plan
          .tube=${tube}
          @tl-plan=${(e: CustomEvent<Answer<'planLadder'>>) => {
            this.plan = e.detail;
            this.planned = true;
          }}
          @tl-no-plan=${() => (this.planned = true)}
        ></tl-ladder-plan>`,
    );
  }

  #session(tube: Tube, ladder: Ladder) {
    const t = ladderWords();
    return html`<div class="session stack">
      <tl-ladder-session .tube=${tube} .ladder=${ladder} @tl-again=${() => this.#fetch()}></tl-ladder-session>
      <tl-ladder-card label=${tube.label} .plan=${ladder.plan} .rungs=${ladder.rungs}></tl-ladder-card>
      <div class="row no-print">
        <button type="button" @click=${() => print()}>${t.print}</button>
        <a href=${linkTo('ladder')}>${t.nextTube}</a>
        <button type="button" class="quiet" @click=${() => void this.#close(ladder)}>${t.close}</button>
      </div>
    </div>`;
  }

  async #start(): Promise<void> {
    const plan = this.renderRoot.querySelector<TlLadderPlan>('tl-ladder-plan');
    if (!plan || this.busy) return;
    this.busy = true;
    await this.#try(async () => {
      await call('startLadder', { body: plan.request });
      this.#handWaits = true;
    });
    this.busy = false;
  }

  async #close(ladder: Ladder): Promise<void> {
    await this.#try(async () => {
      await call('closeLadder', { params: { ladderId: ladder.id } });
      say(ladderWords().closed);
      goTo('rack');
    });
  }

  async #try(work: () => Promise<void>): Promise<void> {
    this.refusal = '';
    try {
      await work();
      this.#fetch();
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  }
}
define('tl-ladder-screen', TlLadderScreen);
