import { css, html, nothing } from 'lit';
import type { FitResult, TubeFitAnswer } from '../../../../server/api/fits.ts';
import { frameWords } from '../../../../src/fit/frame-words.ts';
import type { PaletteProfile, ProfileTube } from '../../../../src/profile/schema.ts';
import { call } from '../../api/call.ts';
import { EventsController } from '../../api/events.ts';
import type { Patch } from '../../design/patch.ts';
import { patchOfReflectance } from '../../design/patch-of-reflectance.ts';
import { patchOfAnswer } from '../../design/patch-of-answer.ts';
import '../../parts/empty.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { waitingPage } from '../../shell/waiting-page.ts';
import { keptBy } from '../../state/kept-by.ts';
import { RemoteController } from '../../state/remote.ts';
import { notBelievedSays } from '../../text/not-believed.ts';
import { said } from '../../text/said.ts';
import { constantsWords } from '../../text/constants.ts';
import {
  type OpenPalette,
  PaletteController,
  quickBench,
  searchBench,
} from '../../workers/palette-controller.ts';
import type { TubeChecks, TubeFacts } from '../../../../server/api/tube-facts.ts';
import type { Ladder } from '../../../../server/api/ladders.ts';
import type { FilmsAnswer } from '../../workers/films-job.ts';
import './palette-sheet.ts';
import './tube-band.ts';
import { fitUnder } from './rung-name.ts';
import type { BandTube } from './tube-band.ts';
import './tube-view.ts';
import { FILMS } from './tube-films.ts';
import { usualRungs } from './tube-facts.ts';

/** A fit never changes once it is complete, nor does a profile. */
const fitResult = keptBy((fitId: string) => call('getFitResult', { params: { fitId } }));
const predictedRungs = keptBy(async (profile: PaletteProfile) => {
  const tubes = await Promise.all(
    profile.tubes.map(async (tube) => {
      const rungs = await Promise.all(
        usualRungs(profile, tube.id).map(async ([name, masses]) => {
          const { reflectance } = await quickBench.run('predict', { masses });
          return [name, patchOfReflectance(reflectance)] as const;
        }),
      );
      return [tube.id, new Map(rungs)] as const;
    }),
  );
  return new Map(tubes);
});

type Opened = Extract<OpenPalette, { status: 'open' }>;

/** What was fitted, tube by tube: `#/constants`, `#/constants/TUBE`, and `#/constants/sheet` to print. */
export class TlConstantsScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    against: { state: true },
    thickness: { state: true },
  };
  declare route: Route | undefined;
  declare against: string;
  /** For the contrast ratio, as the tube's film is told: um where they are known. */
  declare thickness: number | undefined;
  readonly #palette = new PaletteController(this, (palette) => this.#opened(palette));
  readonly #fit = new RemoteController<FitResult>(this);
  readonly #facts = new RemoteController<TubeFacts>(this);
  readonly #checks = new RemoteController<TubeChecks>(this);
  readonly #ladder = new RemoteController<Ladder | undefined>(this);
  readonly #films = new RemoteController<FilmsAnswer>(this);
  readonly #rungs = new RemoteController<ReadonlyMap<string, ReadonlyMap<string, Patch>>>(this);
  #asked = '';

  static override styles = [
    TlElement.styles,
    css`
      .sheet-link {
        justify-self: start;
      }
      .frame {
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.against = '';
    this.thickness = undefined;
    // A reading, a weighing or a check that came in since may say more of the tube in view.
    new EventsController(this, {
      ladder: () => this.#again(),
      changed: ({ what }) => {
        if (what === 'checks') this.#again();
      },
    });
  }

  #opened(palette: OpenPalette): void {
    if (palette.status !== 'open') return;
    this.#asked = '';
    const { profile, summary } = palette;
    const { fitId } = summary;
    if (fitId) void this.#fit.run(() => fitResult(fitId));
    void this.#rungs.run(() => predictedRungs(profile));
  }

  /** Films are worked out for the tube in view only. */
  override willUpdate(): void {
    const palette = this.#palette.value;
    const tube = palette.status === 'open' ? this.#tube(palette) : undefined;
    if (!tube) return;
    const opened = palette as Opened;
    const against = this.#against(opened, tube);
    const key = `${tube.id}|${against}|${this.thickness ?? ''}`;
    if (key === this.#asked) return;
    const sameTube = this.#asked.startsWith(`${tube.id}|`);
    this.#asked = key;
    void this.#ask(opened, tube, against);
    if (sameTube) return;
    void this.#films.run((signal) =>
      searchBench.run('films', { tubeId: tube.id, thicknesses: FILMS }, { signal }),
    );
    void this.#checks.run((signal) => call('getTubeChecks', { params: { tubeId: tube.id }, signal }));
    void this.#ladder.run(async (signal) =>
      (await call('listLadders', { query: { tube: tube.id }, signal })).findLast((l) => l.state !== 'closed'),
    );
  }

  #ask({ profile }: Opened, tube: ProfileTube, against: string): Promise<unknown> {
    const thick =
      this.thickness === undefined
        ? {}
        : profile.whiteScatteringPerMicrometre
          ? { micrometres: String(this.thickness) }
          : { x: String(this.thickness) };
    return this.#facts.run((signal) =>
      call('getTubeFacts', {
        params: { tubeId: tube.id },
        query: { ...thick, ...(against ? { against } : {}) },
        signal,
      }),
    );
  }

  #again(): void {
    this.#asked = '';
    this.requestUpdate();
  }

  override render() {
    const t = constantsWords();
    const palette = this.#palette.value;
    if (palette.status === 'pending' || palette.status === 'error') return waitingPage(palette, t);
    if (palette.status === 'none') return this.#nothing();
    if (this.route?.args[0] === 'sheet') {
      return html`<tl-palette-sheet
        .profile=${palette.profile}
        .fit=${this.#fit.value}
        .rungs=${this.#rungs.value}
        ?ready=${this.#here(palette)}
      ></tl-palette-sheet>`;
    }
    return this.#open(palette);
  }

  #nothing() {
    const t = constantsWords();
    return html`<tl-page heading=${t.title} lead=${t.lead}>
      <tl-next slot="next" label=${t.toLadder} href=${linkTo('ladder')}></tl-next>
      <tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>
    </tl-page>`;
  }

  #open(palette: Opened) {
    const t = constantsWords();
    const tube = this.#tube(palette);
    if (!tube) return this.#nothing();
    if (!this.#here(palette)) {
      return html`<tl-page heading=${t.title} lead=${t.lead} waiting>
        <tl-tube-band .tubes=${this.#band(palette)} current=${tube.id}></tl-tube-band>
        <tl-progress label=${t.fetching}></tl-progress>
      </tl-page>`;
    }
    const fit = this.#fitOf(tube);
    const left = fit?.notBelieved[0];
    const frame = frameWords(palette.profile, palette.profile.surface.estimated);
    const warned = left ? notBelievedSays(left) : tube.evidence?.warnings.map(said)[0];
    return html`<tl-page
      heading=${t.title}
      lead=${t.lead}
      .terms=${['constants', 'rung', 'masstone', 'tint', 'hiding', 'undertone', 'strength', 'trust', 'difference']}
    >
      ${
        warned
          ? html`<tl-next
              slot="next"
              label=${t.measure}
              hint=${warned}
              href=${linkTo('ladder', tube.id)}
            ></tl-next>`
          : html`<tl-next slot="next" label=${t.toMixing} hint=${t.ready} href=${linkTo('mixing')}></tl-next>`
      }
      <tl-tube-band .tubes=${this.#band(palette)} current=${tube.id}></tl-tube-band>
      <tl-tube-view
        .profile=${palette.profile}
        .tube=${tube}
        .fit=${fit}
        .result=${this.#fit.value}
        .rungs=${this.#rungs.value?.get(tube.id)}
        .films=${this.#films.value}
        .facts=${this.#facts.value?.tubeId === tube.id ? this.#facts.value : undefined}
        .checks=${this.#checks.value?.tubeId === tube.id ? this.#checks.value : undefined}
        .ladder=${this.#ladder.value?.tubeId === tube.id ? this.#ladder.value : undefined}
        .against=${this.#against(palette, tube)}
        ?settled=${[this.#films, this.#facts, this.#checks, this.#ladder].every(isOver)}
        @tl-against=${(e: CustomEvent<string>) => (this.against = e.detail)}
        @tl-thickness=${(e: CustomEvent<number>) => (this.thickness = e.detail)}
      ></tl-tube-view>
      ${frame ? html`<p class="frame">${said(frame)}</p>` : nothing}
      ${this.#fit.error ? html`<tl-notice kind="warning" live>${this.#fit.error.message}</tl-notice>` : nothing}
      <a class="sheet-link no-print" href=${linkTo('constants', 'sheet')}>${t.sheet}</a>
    </tl-page>`;
  }

  /** Whether what stands at the top has come: a line that came later would push down all that follows. */
  #here({ summary }: Opened): boolean {
    return isOver(this.#rungs) && (!summary.fitId || isOver(this.#fit));
  }

  #tube({ profile }: Opened): ProfileTube | undefined {
    const wanted = this.route?.args[0];
    return (
      profile.tubes.find((tube) => tube.id === wanted) ??
      profile.tubes.find((tube) => tube.id !== profile.white) ??
      profile.tubes[0]
    );
  }

  #fitOf(tube: ProfileTube): TubeFitAnswer | undefined {
    return fitUnder(this.#fit.value, tube);
  }

  #against({ profile }: Opened, tube: ProfileTube): string {
    const others = profile.tubes.filter((o) => o.id !== tube.id && o.id !== profile.white);
    return (others.find((o) => o.id === this.against) ?? others[0])?.id ?? '';
  }

  #band({ profile }: Opened): BandTube[] {
    return profile.tubes.map((tube) => {
      const fit = this.#fitOf(tube);
      const rungs = [...(this.#rungs.value?.get(tube.id)?.values() ?? [])];
      return {
        id: tube.id,
        label: tube.label,
        pigments: tube.pigments,
        white: tube.id === profile.white,
        masstone: fit ? patchOfAnswer(fit.masstone) : rungs[0],
        tint: fit?.tint ? patchOfAnswer(fit.tint) : (rungs[2] ?? rungs[0]),
        href: linkTo('constants', tube.id),
      };
    });
  }
}
function isOver({ state, value }: RemoteController<unknown>): boolean {
  return value !== undefined || state.status === 'complete' || state.status === 'error';
}

define('tl-constants-screen', TlConstantsScreen);
