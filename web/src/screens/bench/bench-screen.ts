import { html, nothing } from 'lit';
import type { Instrument } from '../../../../server/api/instrument.ts';
import { type Answer, call } from '../../api/call.ts';
import '../../parts/findings.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { ProblemError } from '../../api/problem.ts';
import { BenchState, setInstrument } from '../../state/bench-state.ts';
import { benchSays, findingSays } from '../../text/findings.ts';
import { benchWords } from '../../text/bench.ts';
import { headWords } from '../../text/head.ts';
import { when } from '../../text/numbers.ts';
import { RemoteController } from '../../state/remote.ts';
import './about-head.ts';
import { benchStyles } from './bench-styles.ts';
import { type StepName, isOn, neededStep, nextStep } from './bench-steps.ts';
import type { Connection } from './connect.ts';
import './connect.ts';
import { readStep } from './calibrate.ts';
import './head-record.ts';
import './head-tests.ts';
import type { TlLiveCounts } from './live-counts.ts';
import './live-counts.ts';
import './warm-up.ts';
import './white-tiles.ts';
import { said } from '../../text/said.ts';

/** Where the head is connected, set on dark, white and black, and watched. */
export class TlBenchScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    wanted: { state: true },
    busy: { state: true },
    refusal: { state: true },
    watching: { state: true },
  };
  declare route: Route | undefined;
  /** What the next step would connect; nothing until the ports are known. */
  declare wanted: Connection | undefined;
  declare busy: '' | 'connect' | 'read' | StepName;
  declare refusal: string;
  /** Reading over and over, to watch the head settle. */
  declare watching: boolean;

  static override styles = [TlElement.styles, benchStyles];
  readonly #bench = new BenchState(this);
  readonly #record = new RemoteController<Answer<'getHeadRecord'>>(this);
  /** The head the record is of. */
  #recordOf = '';

  constructor() {
    super();
    this.route = undefined;
    this.wanted = undefined;
    this.busy = '';
    this.refusal = '';
    this.watching = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watching = false;
  }

  override updated(): void {
    const instrument = this.#bench.value?.instrument;
    const name = isOn(instrument) ? headName(instrument) : '';
    if (name === this.#recordOf) return;
    this.#recordOf = name;
    if (name) void this.#look();
  }

  override render() {
    const t = benchWords();
    const instrument = this.#bench.value?.instrument;
    return html`<tl-page
      heading=${t.title}
      lead=${isOn(instrument) ? t.onLead : t.lead}
      ?waiting=${!isOn(instrument) && !this.wanted}
      .terms=${['dark', 'whiteTile', 'blackTrap', 'geometry', 'reading']}
      .cautions=${t.lampCare}
    >
      ${this.#next(instrument)}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${
        this.#bench.error && !instrument
          ? html`<tl-notice kind="error" live>${this.#bench.error.message}</tl-notice>`
          : nothing
      }
      ${instrument ? html`<tl-findings .findings=${instrument.findings}></tl-findings>` : nothing}
      ${this.busy === 'connect' || instrument?.state === 'connecting' ? this.#waiting() : nothing}
      ${isOn(instrument) ? this.#set(instrument) : nothing}
      ${instrument && !isOn(instrument) ? this.#connect() : nothing}
    </tl-page>`;
  }

  #waiting() {
    return html`<tl-progress label=${benchWords().connecting}></tl-progress>
      <button class="stop" type="button" @click=${() => void this.#stopWaiting()}>
        ${headWords().stopWaiting}
      </button>`;
  }

  #connect() {
    return html`<tl-connect
      @tl-wanted=${(e: CustomEvent<Connection>) => {
        if (JSON.stringify(e.detail) !== JSON.stringify(this.wanted)) this.wanted = e.detail;
      }}
      @tl-connect=${(e: CustomEvent<Connection>) => void this.#connectTo(e.detail)}
      @tl-refused=${(e: CustomEvent<string>) => (this.refusal = benchSays(e.detail))}
    ></tl-connect>`;
  }

  #next(instrument: Instrument | undefined) {
    const t = benchWords();
    if (!instrument) return nothing;
    if (!isOn(instrument)) {
      const { wanted } = this;
      if (!wanted) return nothing;
      const serial = wanted.transport === 'serial';
      return html`<tl-next
        slot="next"
        label=${serial ? t.connectHead : t.startPractice}
        hint=${serial ? t.connectHint(wanted.path) : t.practiceHint}
        ?busy=${this.busy === 'connect'}
        @click=${() => void this.#connectTo(wanted)}
      ></tl-next>`;
    }
    const step = nextStep(instrument);
    if (step) {
      return html`<tl-next
        slot="next"
        label=${t.read[step]}
        hint=${t.how[step]}
        ?busy=${this.busy !== ''}
        @click=${() => void this.#read(step)}
      ></tl-next>`;
    }
    return html`<tl-next
      slot="next"
      label=${t.ready}
      hint=${t.readyHint}
      href=${linkTo('ladder')}
    ></tl-next>`;
  }

  #set(instrument: Instrument) {
    const t = benchWords();
    const idle = this.busy === '' && instrument.state === 'ready' && !this.watching;
    const next = nextStep(instrument);
    return html`<div class="table">
        <section class="stack" aria-label=${t.title}>
          <ol class="steps">
            <li class=${instrument.warmUp.state === 'settled' ? 'good' : 'open'}>
              <i aria-hidden="true"></i>
              <tl-warm-up
                .instrument=${instrument}
                @tl-refused=${(e: CustomEvent<string>) => (this.refusal = e.detail)}
              ></tl-warm-up>
            </li>
            ${instrument.steps.map((s) => this.#step(s, s.step === next))}
          </ol>
        </section>
        <section class="stack">
          <h2>${t.live}</h2>
          <tl-live-counts></tl-live-counts>
          <button type="button" ?disabled=${this.busy !== ''} @click=${() => void this.#readOnce()}>
            ${t.liveRead}
          </button>
          <button type="button" aria-pressed=${this.watching} @click=${() => void this.#watch()}>
            ${this.watching ? t.stop : t.watch}
          </button>
          ${
            next && !neededStep(instrument)
              ? html`<a class="without" href=${linkTo('ladder')}>${t.without}</a>`
              : nothing
          }
          <tl-about-head
            .instrument=${instrument}
            @tl-refused=${(e: CustomEvent<string>) => (this.refusal = e.detail)}
          ></tl-about-head>
        </section>
      </div>
      <div class="more" @tl-found=${() => void this.#look()}>
        <tl-white-tiles ?idle=${idle} head=${headName(instrument)}></tl-white-tiles>
        <tl-head-tests ?idle=${idle} .record=${this.#record.value}></tl-head-tests>
        <tl-head-record .record=${this.#record.value}></tl-head-record>
      </div>`;
  }

  #step(s: Instrument['steps'][number], isNext: boolean) {
    const t = benchWords();
    const mark = s.state === 'good' ? 'good' : s.state === 'refused' ? 'refused' : 'open';
    return html`<li class=${mark} aria-current=${isNext ? 'step' : nothing}>
      <i aria-hidden="true"></i>
      <div>
        <h2>${t.steps[s.step]}: ${t.states[s.state]}</h2>
        <p>
          ${s.optional && s.state === 'not done' ? html`<b>${t.optional}.</b>` : nothing}
          ${s.state === 'not done' ? t.how[s.step] : benchSays(s.sentence)}
          ${s.at ? html`<span class="small">${t.at(when(s.at))}</span>` : nothing}
        </p>
      </div>
      ${
        isNext
          ? nothing
          : html`<button
              type="button"
              ?disabled=${this.busy !== ''}
              aria-label=${t.read[s.step]}
              @click=${() => void this.#read(s.step)}
            >
              ${s.state === 'not done' ? t.read[s.step] : t.again}
            </button>`
      }
    </li>`;
  }

  async #connectTo(body: Connection): Promise<void> {
    await this.#do('connect', async () => {
      const instrument = await call('connectInstrument', { body });
      setInstrument(instrument);
      return benchWords().connected(instrument.identity?.model ?? benchWords().identity);
    });
  }

  async #read(step: StepName): Promise<void> {
    await this.#do(step, async () => {
      const instrument = await readStep(step);
      setInstrument(instrument);
      if (step === 'check tile') await this.#look();
      const seen = instrument.steps.find((s) => s.step === step);
      return seen?.state === 'good'
        ? benchWords().done(benchWords().steps[step])
        : said(seen?.sentence ?? instrument.next);
    });
  }

  /** Fetches what is known of the head. */
  async #look(): Promise<void> {
    await this.#record.run((signal) => call('getHeadRecord', { signal }));
  }

  async #stopWaiting(): Promise<void> {
    setInstrument(await call('disconnectInstrument'));
    say(headWords().stopped);
  }

  async #readOnce(): Promise<void> {
    await this.#do('read', async () => {
      const reading = await call('readOnce');
      this.renderRoot.querySelector<TlLiveCounts>('tl-live-counts')?.draw(reading);
      return reading.findings.map((f) => findingSays(f)).join(' ');
    });
  }

  async #watch(): Promise<void> {
    this.watching = !this.watching;
    const live = this.renderRoot.querySelector<TlLiveCounts>('tl-live-counts');
    while (this.watching && live?.isConnected) {
      if (this.busy) await new Promise((resolve) => setTimeout(resolve, 200));
      else {
        try {
          live.draw(await call('readOnce'));
        } catch (cause) {
          this.watching = false;
          this.refusal = cause instanceof Error ? cause.message : String(cause);
        }
      }
    }
  }

  async #do(what: TlBenchScreen['busy'], work: () => Promise<string>): Promise<void> {
    if (this.busy) return;
    this.busy = what;
    this.refusal = '';
    try {
      say(await work());
    } catch (cause) {
      const letGo = cause instanceof ProblemError && cause.more['type'] === '/problems/let-go';
      if (!letGo) this.refusal = cause instanceof Error ? benchSays(cause.message) : String(cause);
    } finally {
      this.busy = '';
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('tl-next')?.focus();
    }
  }
}

const headName = ({ identity }: Instrument): string =>
  identity ? `${identity.model} ${identity.serial}` : '';
define('tl-bench-screen', TlBenchScreen);
