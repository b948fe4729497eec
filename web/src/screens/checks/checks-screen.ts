import { html, nothing } from 'lit';
import type { CheckAnswer } from '../../../../server/api/checks.ts';
import type { TakeReading } from '../../../../server/api/readings.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { type Answer, call } from '../../api/call.ts';
import { EventsController } from '../../api/events.ts';
import { onThisScreen } from '../../design/patch.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import '../../parts/empty.ts';
import '../../parts/figures.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { BenchState } from '../../state/bench-state.ts';
import { RemoteController } from '../../state/remote.ts';
import { checksWords } from '../../text/checks.ts';
import { num } from '../../text/numbers.ts';
import { PaletteController, quickBench } from '../../workers/palette-controller.ts';
import './check-card.ts';
import './check-composer.ts';
import type { ComposedCheck } from './check-composer.ts';
import { recipeWords } from './recipe-words.ts';
import { type Masses, teachingMixture } from './teaching-mixture.ts';
import { said } from '../../text/said.ts';

/** Cards shown at first, and added at each press. */
const AT_A_TIME = 6;

/** Mixtures that were never fitted: written down, read, and held against their predictions. */
export class TlChecksScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    composing: { state: true },
    failed: { state: true },
    busy: { state: true },
    findings: { state: true },
    shown: { state: true },
    chart: { state: true },
  };
  declare route: Route | undefined;
  declare composing: boolean;
  declare failed: string;
  /** Id of the check being read. */
  declare busy: string;
  declare findings: { readonly id: string; readonly sentences: readonly string[] } | undefined;
  /** How many cards are on the page: a file can bring hundreds. */
  declare shown: number;
  /** The picture of them all, where there are many: what stands below it waits for it. */
  declare chart: '' | 'coming' | 'over';
  readonly #bench = new BenchState(this);
  readonly #palette = new PaletteController(this, () => void this.#suggest());
  readonly #checks = new RemoteController<Answer<'listChecks'>>(this);
  readonly #teaching = new RemoteController<Masses | undefined>(this);

  constructor() {
    super();
    this.route = undefined;
    this.composing = false;
    this.failed = '';
    this.busy = '';
    this.findings = undefined;
    this.shown = AT_A_TIME;
    this.chart = '';
    new EventsController(this, {
      hello: () => void this.#fetch(),
      changed: ({ what }) => {
        if (what === 'checks' || what === 'palettes' || what === 'profiles') void this.#fetch();
      },
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#fetch();
  }

  async #fetch(): Promise<void> {
    const answer = await this.#checks.run((signal) => call('listChecks', { signal }));
    if (answer && isMany(answer.checks) && !this.chart) {
      // Charts come when there is something to draw; the numbers do not wait for them, what stands below does.
      this.chart = 'coming';
      const over = (): unknown => (this.chart = 'over');
      void import('../../charts/residual-chart.ts').then(over, over);
    }
    await this.#suggest();
  }

  /** Nothing will come any more that pushes the cards down. */
  get #settled(): boolean {
    const checks = this.#checks.value?.checks;
    return (checks !== undefined && (!isMany(checks) || this.chart === 'over')) || !!this.#checks.error;
  }

  async #suggest(): Promise<void> {
    const palette = this.#palette.value;
    if (palette.status !== 'open') return;
    const checked = this.#checks.value?.checks.map((c) => c.masses) ?? [];
    await this.#teaching.run((signal) => teachingMixture(palette.profile, checked, quickBench, signal));
  }

  override render() {
    const t = checksWords();
    const palette = this.#palette.value;
    if (palette.status === 'none') {
      return html`<tl-page heading=${t.title} lead=${t.lead}>
        <tl-next slot="next" label=${t.toLadder} href=${linkTo('ladder')}></tl-next>
        <tl-empty heading=${t.noProfile}><p>${t.noneHow}</p></tl-empty>
      </tl-page>`;
    }
    const checks = this.#checks.value?.checks;
    return html`<tl-page
      heading=${t.title}
      lead=${t.lead}
      .terms=${['trust', 'difference', 'drawdown', 'reading']}
      ?waiting=${!this.#settled}
    >
      <div slot="next">${this.#next(checks ?? [])}</div>
      ${this.failed ? html`<tl-notice kind="error" live>${this.failed}</tl-notice>` : nothing}
      ${this.#checks.error ? html`<tl-notice kind="error" live>${this.#checks.error.message}</tl-notice>` : nothing}
      ${this.composing && palette.status === 'open' ? this.#composer(palette.profile) : nothing}
      ${this.#summary()} ${this.#another(checks ?? [])}
      ${
        checks
          ? checks.length > 0
            ? html`${this.#overview(checks)} ${this.#settled ? this.#cards(checks) : nothing}`
            : html`<tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>`
          : html`<tl-progress label=${t.fetching}></tl-progress>`
      }
    </tl-page>`;
  }

  #next(checks: readonly CheckAnswer[]) {
    const t = checksWords();
    if (this.composing) return nothing;
    const waiting = checks.find((c) => c.result === null);
    const ready = this.#bench.value?.instrument.readyToRead === true;
    if (waiting && ready) {
      return html`<tl-next
        label=${t.readNext(waiting.title)}
        hint=${t.readHint}
        ?busy=${this.busy === waiting.id}
        @click=${() => void this.#read(waiting.id, { source: 'head' })}
      ></tl-next>`;
    }
    const palette = this.#palette.value;
    const teaching = this.#teaching.value;
    const hint =
      teaching && palette.status === 'open' ? t.mixHint(recipeWords(teaching, palette.profile, 0)) : '';
    return html`<tl-next
      label=${t.mixNext}
      hint=${hint}
      ?disabled=${palette.status !== 'open'}
      @click=${() => (this.composing = true)}
    ></tl-next>`;
  }

  /** Another mixture can be written down while one still waits to be read. */
  #another(checks: readonly CheckAnswer[]) {
    const waiting =
      checks.some((c) => c.result === null) && this.#bench.value?.instrument.readyToRead === true;
    if (!waiting || this.composing) return nothing;
    return html`<div class="no-print">
      <button type="button" @click=${() => (this.composing = true)}>${checksWords().mixNext}</button>
    </div>`;
  }

  #composer(profile: PaletteProfile) {
    const t = checksWords();
    const start =
      this.#teaching.value ?? Object.fromEntries(profile.tubes.slice(0, 2).map((tube) => [tube.id, 1]));
    return html`<section class="stack">
      <h2>${t.newCheck}</h2>
      <tl-check-composer
        .profile=${profile}
        .start=${start}
        @tl-composed=${(e: CustomEvent<ComposedCheck>) => void this.#create(e.detail)}
        @tl-leave=${() => (this.composing = false)}
      ></tl-check-composer>
    </section>`;
  }

  #summary() {
    const t = checksWords();
    const summary = this.#checks.value?.summary;
    if (!summary) return nothing;
    return html`<section class="stack">
      <p>${said(summary.sentence)}</p>
      <tl-figures
        .figures=${[
          { name: t.count, figure: num(summary.count, 0) },
          { name: t.mean, figure: num(summary.meanDeltaE00, 1), means: t.about },
          { name: t.worst, figure: num(summary.maxDeltaE00, 1) },
          { name: t.within, figure: t.of(num(summary.inside95, 0), num(summary.count, 0)) },
        ]}
      ></tl-figures>
    </section>`;
  }

  /** Every check in one picture, where there are more than can be looked at one by one. */
  #overview(checks: readonly CheckAnswer[]) {
    const t = checksWords();
    if (!isMany(checks)) return nothing;
    const read = checks.flatMap((c) => (c.result ? [{ title: c.title, result: c.result }] : []));
    return html`<tl-residual-chart
      heading=${t.all}
      summary=${t.allSays}
      axis=${t.title}
      .rungs=${read.map(({ title, result }) => ({
        label: title,
        paint: onThisScreen(patchOfAnswer(result.measuredColour).lab).css,
        deltaE00: result.deltaE00,
      }))}
    ></tl-residual-chart>`;
  }

  #cards(checks: readonly CheckAnswer[]) {
    return html`${waitingFirst(checks, this.findings?.id)
      .slice(0, this.shown)
      .map((check) => this.#card(check))}
    ${this.#moreOf(checks.length)}`;
  }

  #moreOf(count: number) {
    if (count <= this.shown) return nothing;
    return html`<button type="button" class="no-print" @click=${() => (this.shown += 3 * AT_A_TIME)}>
      ${checksWords().showMore(num(count - this.shown, 0))}
    </button>`;
  }

  #card(check: CheckAnswer) {
    const palette = this.#palette.value;
    return html`<tl-check-card
      .check=${check}
      .profile=${palette.status === 'open' ? palette.profile : undefined}
      .headReady=${this.#bench.value?.instrument.readyToRead === true}
      .busy=${this.busy === check.id}
      .findings=${this.findings?.id === check.id ? this.findings.sentences : []}
      @tl-read=${(e: CustomEvent<{ id: string; take: TakeReading }>) => void this.#read(e.detail.id, e.detail.take)}
      @tl-away=${() => void this.#away(check)}
    ></tl-check-card>`;
  }

  async #attempt(work: () => Promise<void>): Promise<void> {
    this.failed = '';
    try {
      await work();
    } catch (cause) {
      this.failed = cause instanceof Error ? cause.message : String(cause);
    }
  }

  async #create({ title, masses }: ComposedCheck): Promise<void> {
    await this.#attempt(async () => {
      const { id } = await call('createCheck', { body: { title, masses } });
      this.findings = { id, sentences: [] };
      this.composing = false;
      say(checksWords().wrote(title));
      await this.#fetch();
    });
  }

  async #read(checkId: string, take: TakeReading): Promise<void> {
    this.busy = checkId;
    await this.#attempt(async () => {
      const { findings } = await call('readCheck', { params: { checkId }, body: take });
      this.findings = { id: checkId, sentences: findings.map((f) => said(f.sentence)) };
      await this.#fetch();
    });
    this.busy = '';
  }

  async #away(check: CheckAnswer): Promise<void> {
    await this.#attempt(async () => {
      await call('deleteCheck', { params: { checkId: check.id } });
      say(checksWords().gone(check.title));
      await this.#fetch();
    });
  }
}

/** Too many read to be looked at one by one. */
function isMany(checks: readonly CheckAnswer[]): boolean {
  return checks.filter((c) => c.result).length > AT_A_TIME;
}

/** What was just touched comes first, then what waits to be read, and what lies outside its prediction before what lies inside. */
function waitingFirst(checks: readonly CheckAnswer[], touched: string | undefined): CheckAnswer[] {
  const rank = ({ id, result }: CheckAnswer): number =>
    id === touched ? -1 : !result ? 0 : result.inside95 ? 2 : 1;
  return checks.toSorted((p, q) => rank(p) - rank(q));
}

define('tl-checks-screen', TlChecksScreen);
