import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Tube } from '../../../../server/api/tubes.ts';
import { type Answer, call } from '../../api/call.ts';
import { EventsController } from '../../api/events.ts';
import { patchOfColour } from '../../design/patch.ts';
import '../../parts/compare.ts';
import '../../parts/dialog.ts';
import '../../parts/empty.ts';
import '../../parts/field.ts';
import type { TlNext } from '../../parts/next-step.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import '../../parts/tube-card.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { BenchState, refreshBench } from '../../state/bench-state.ts';
import { RemoteController } from '../../state/remote.ts';
import { settings } from '../../state/settings.ts';
import { num, when } from '../../text/numbers.ts';
import { trustSays } from '../../text/findings.ts';
import { rackWords } from '../../text/rack.ts';
import './first-walk.ts';
import './palette-choice.ts';
import { nextTube } from './next-tube.ts';
import { samePigment, turnOf } from './rack-list.ts';
import { rackStyles } from './rack-styles.ts';
import './tube-form.ts';
import { said } from '../../text/said.ts';

/** The tubes, what is known of each, and whose turn it is. */
export class TlRackScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    writing: { state: true },
    refusal: { state: true },
  };
  declare route: Route | undefined;
  /** The tube being written on; 'new' for one to come. */
  declare writing: Tube | 'new' | undefined;
  declare refusal: string;

  static override styles = [TlElement.styles, rackStyles];
  readonly #bench = new BenchState(this);
  readonly #tubes = new RemoteController<readonly Tube[]>(this);
  /** Where the hand is led once there are so many tubes. */
  #handWaits: { readonly tubes: number; readonly to: 'next step' | 'where it was' } | undefined;
  readonly #paints = new RemoteController<Answer<'listPracticePaints'>>(this);

  constructor() {
    super();
    this.route = undefined;
    this.writing = undefined;
    this.refusal = '';
    new EventsController(this, {
      hello: () => void this.#fetch(),
      changed: ({ what }) => {
        if (what !== 'settings') void this.#fetch();
      },
      ladder: () => void this.#fetch(),
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#fetch();
    void this.#paints.run((signal) => call('listPracticePaints', { signal }));
  }

  /** What is written on the palette: said once above the tubes, not again on each. */
  get #note(): string | undefined {
    return this.#bench.value?.palettes.find((p) => p.current)?.note;
  }

  /** What was pressed went with the empty rack: the hand is to find the next step. */
  override updated(): void {
    const waits = this.#handWaits;
    if (!waits || (this.#tubes.value?.length ?? 0) < waits.tubes) return;
    this.#handWaits = undefined;
    if (waits.to === 'next step') void this.renderRoot.querySelector<TlNext>('tl-next')?.take();
    // The dialog gave the focus back to the button it was opened from; the new tube has moved it since.
    else this.shadowRoot?.activeElement?.scrollIntoView({ block: 'nearest' });
  }

  async #fetch(): Promise<void> {
    await this.#tubes.run(async (signal) => {
      const [here, away] = await Promise.all([
        call('listTubes', { signal }),
        call('listTubes', { query: { putAway: 'true' }, signal }),
      ]);
      const seen = new Set(here.map((t) => t.id));
      return [...here, ...away.filter((t) => !seen.has(t.id))];
    });
  }

  override render() {
    const t = rackWords();
    const state = this.#bench.value;
    // What stands above the tubes comes with them, so that nothing is pushed down.
    const tubes = state || this.#bench.error ? this.#tubes.value : undefined;
    const here = tubes?.filter((x) => !x.putAway) ?? [];
    const away = tubes?.filter((x) => x.putAway) ?? [];
    const error = this.#tubes.error ?? this.#bench.error;
    const palettes =
      state && tubes ? html`<tl-palette-choice .palettes=${state.palettes}></tl-palette-choice>` : nothing;
    // Which palette it is comes first where that is a question; beginning another is wanted rarely.
    const chosen = (state?.palettes.length ?? 0) > 1 || state?.palettes.some((p) => p.demo || p.note);
    return html`<tl-page
      heading=${t.title}
      ?waiting=${!tubes}
      lead=${tubes && here.length === 0 ? t.firstLead : t.lead}
      .terms=${['tube', 'pigment', 'masstone', 'tint', 'ladder', 'constants', 'trust']}
    >
      ${tubes ? this.#next(here) : nothing}
      ${
        this.refusal || error
          ? html`<tl-notice kind="error" live>${this.refusal || error?.message}</tl-notice>`
          : nothing
      }
      ${chosen ? palettes : nothing} ${tubes && here.length === 0 ? this.#empty() : nothing}
      ${
        settings().walkDone || !state || !tubes
          ? nothing
          : html`<tl-first-walk .state=${state} .tubes=${here}></tl-first-walk>`
      }
      <ul class="shelf" aria-label=${t.title}>
        ${repeat(
          here,
          (tube) => tube.id,
          (tube) => this.#tube(tube),
        )}
      </ul>
      ${samePigment(here).map(({ codes, tubes: same }) => this.#same(codes, same))}
      ${
        away.length > 0
          ? html`<section class="stack">
              <h2>${t.awayHeading}</h2>
              <ul class="shelf">
                ${away.map((tube) => this.#tube(tube))}
              </ul>
            </section>`
          : nothing
      }
      ${
        here.length > 0 && turnOf(here).kind !== 'white' && turnOf(here).kind !== 'tube'
          ? html`<div class="row">
              <button type="button" @click=${() => (this.writing = 'new')}>${t.addTube}</button>
              ${
                state?.palettes.some((p) => p.demo)
                  ? nothing
                  : html`<button type="button" class="quiet" @click=${this.#demo}>${t.demo}</button>`
              }
            </div>`
          : nothing
      }
      ${chosen ? nothing : palettes} ${this.#dialog(here)}
    </tl-page>`;
  }

  #next(here: readonly Tube[]) {
    const t = rackWords();
    const turn = turnOf(here);
    switch (turn.kind) {
      case 'white':
        return this.#nextButton(t.addWhite, t.addWhiteHint);
      case 'tube':
        return this.#nextButton(t.addTube, t.addFirstHint);
      case 'mix':
        return html`<tl-next
          slot="next"
          label=${t.mix}
          hint=${t.mixHint}
          href=${linkTo('mixing')}
        ></tl-next>`;
      default:
        return nextTube(here);
    }
  }

  #nextButton(label: string, hint: string) {
    return html`<tl-next
      slot="next"
      label=${label}
      hint=${hint}
      @click=${() => (this.writing = 'new')}
    ></tl-next>`;
  }

  #empty() {
    const t = rackWords();
    return html`<tl-empty heading=${t.emptyHeading}>
      <p>${t.emptyText}</p>
      <div class="row"><button type="button" @click=${this.#demo}>${t.demo}</button></div>
    </tl-empty>`;
  }

  #tube(tube: Tube) {
    const t = rackWords();
    const { known } = tube;
    const written = [
      tube.role === 'white' ? t.white : '',
      tube.pigments.join(' '),
      tube.batch ? t.batch(tube.batch) : '',
      tube.bought ? t.bought(when(tube.bought, false)) : '',
      tube.drying === 'unknown' ? '' : t.drying[tube.drying],
    ].filter(Boolean);
    return html`<li class="tube">
      <tl-tube-card
        label=${tube.label}
        ?white=${tube.role === 'white'}
        .masstone=${known.masstone ? patchOfColour(known.masstone) : undefined}
        .tint=${known.tint ? patchOfColour(known.tint) : undefined}
      ></tl-tube-card>
      <div class="written">
        <h2>${tube.label}</h2>
        <p>${written.join(' · ')}</p>
        <p class="known">
          <b>${t.stages[known.stage]}</b>
          ${
            known.stage === 'ladder begun'
              ? html`· ${t.rungs(num(known.rungsDone, 0), num(known.rungsTotal, 0))}`
              : nothing
          }
          ${known.trust ? html`<br />${trustSays(known.trust)}` : nothing}
        </p>
        ${tube.note && tube.note !== this.#note ? html`<p class="small">${tube.note}</p>` : nothing}
        ${this.#care(tube)}
        <div class="row actions no-print">
          <a class="action" href=${linkTo('ladder', tube.id)}>${t.ladderAction}</a>
          ${
            known.stage === 'constants'
              ? html`<a class="action" href=${linkTo('constants', tube.id)}>${t.constantsAction}</a>`
              : nothing
          }
          ${
            known.stage === 'constants' && tube.role !== 'white'
              ? html`<a href=${linkTo('profile', 'replace', tube.id)}
                  >${t.replaceAction}<span class="unseen">: ${tube.label}</span></a
                >`
              : nothing
          }
          <button type="button" class="quiet" @click=${() => (this.writing = tube)}>
            ${t.edit}<span class="unseen">: ${tube.label}</span>
          </button>
        </div>
      </div>
    </li>`;
  }

  #care(tube: Tube) {
    if (tube.cautions.length === 0) return nothing;
    return html`<tl-notice kind="caution" heading=${rackWords().handleCare(tube.pigments.join(' '))}>
      ${tube.cautions.map((c) => html`<p class="small">${said(c)}</p>`)}
    </tl-notice>`;
  }

  #same(codes: string, tubes: readonly Tube[]) {
    const t = rackWords();
    const read = tubes.filter((x) => x.known.masstone);
    const tinted = tubes.filter((x) => x.known.tint);
    const rows = [
      { of: read, pick: (x: Tube) => x.known.masstone },
      { of: tinted, pick: (x: Tube) => x.known.tint },
    ].filter((r) => r.of.length > 1);
    return html`<section class="stack">
      <h2>${t.samePigment(codes)}</h2>
      <p>${rows.length > 0 ? t.samePigmentNote : t.notBoth}</p>
      ${rows.map(
        ({ of, pick }) =>
          html`<tl-compare
            .patches=${of.map((x) => patchOfColour(pick(x)!))}
            .names=${of.map((x) => x.label)}
          ></tl-compare>`,
      )}
    </section>`;
  }

  #dialog(here: readonly Tube[]) {
    const t = rackWords();
    const { writing } = this;
    const tube = writing === 'new' ? undefined : writing;
    return html`<tl-dialog
      heading=${tube ? t.editTube(tube.label) : t.newTube}
      ?open=${writing !== undefined}
      @tl-close=${() => (this.writing = undefined)}
    >
      ${
        writing === undefined
          ? nothing
          : html`<tl-tube-form
              .tube=${tube}
              .practicePaints=${this.#paints.value ?? []}
              ?needsPalette=${this.#bench.value?.currentPaletteId === null}
              ?needsWhite=${!here.some((x) => x.role === 'white')}
              @tl-saved=${this.#saved}
            ></tl-tube-form>`
      }
    </tl-dialog>`;
  }

  readonly #saved = (): void => {
    // The first two are put in from the next step, which then is another one.
    const here = this.#tubes.value?.length ?? 0;
    if (this.writing === 'new')
      this.#handWaits = { tubes: here + 1, to: here < 2 ? 'next step' : 'where it was' };
    this.writing = undefined;
    void this.#fetch();
    void refreshBench();
  };

  readonly #demo = async (): Promise<void> => {
    this.refusal = '';
    try {
      await call('createDemoRack');
      say(rackWords().demoTaken);
      this.#handWaits = { tubes: 1, to: 'next step' };
      await refreshBench();
      void this.#fetch();
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
  };
}
define('tl-rack-screen', TlRackScreen);
