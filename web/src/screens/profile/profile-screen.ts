import { css, html, nothing } from 'lit';
import type { ProfileSummary } from '../../../../server/api/profiles.ts';
import { call, urlOf } from '../../api/call.ts';
import { EventsController } from '../../api/events.ts';
import '../../parts/empty.ts';
import '../../parts/figures.ts';
import '../../parts/next-step.ts';
import '../../parts/notice.ts';
import '../../parts/page-frame.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { type Route, linkTo } from '../../shell/route.ts';
import { RemoteController } from '../../state/remote.ts';
import { constantsWords } from '../../text/constants.ts';
import { num, when } from '../../text/numbers.ts';
import { profileWords } from '../../text/profile.ts';
import { replaceWords } from '../../text/replace.ts';
import { type OpenPalette, PaletteController } from '../../workers/palette-controller.ts';
import './profile-compare.ts';
import './profile-import.ts';
import './tube-replace.ts';
import { said } from '../../text/said.ts';

type Opened = Extract<OpenPalette, { status: 'open' }>;
const FORMATS = ['json', 'csv', 'cgats'] as const;

/** The palette profile: what is in it, taking it along, taking one in, comparing, and where each came from. */
export class TlProfileScreen extends TlElement {
  static override properties = {
    route: { attribute: false },
    makers: { state: true },
    failed: { state: true },
    looking: { state: true },
  };
  declare route: Route | undefined;
  declare makers: boolean;
  declare failed: string;
  /** A file lies open below: taking it in is the next step then. */
  declare looking: boolean;
  readonly #palette = new PaletteController(this);
  /** The first answer is in: from now on a file that lies open stays where it is. */
  #stands = false;
  readonly #history = new RemoteController<ProfileSummary[]>(this);

  static override styles = [
    TlElement.styles,
    css`
      ul {
        list-style: none;
        padding: 0;
        max-inline-size: none;
      }
      /* Two matters side by side where there is room: each is short. */
      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 30rem), 1fr));
        gap: var(--s4);
        align-items: start;
      }
      .formats {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s1) var(--s3);
      }
      .formats a {
        min-block-size: var(--target);
        align-content: center;
      }
      .tick {
        display: flex;
        gap: 12px;
        align-items: center;
        min-block-size: var(--target);
      }
      .tick input {
        inline-size: 24px;
        block-size: 24px;
        accent-color: #000;
        flex: none;
      }
      .history li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 4px var(--s2);
        align-items: center;
        padding-block: 8px;
        border-block-end: var(--rule);
      }
      .history p {
        font-size: var(--t-small);
      }
    `,
  ];

  constructor() {
    super();
    this.route = undefined;
    this.makers = false;
    this.failed = '';
    this.looking = false;
    new EventsController(this, {
      changed: ({ what }) => {
        if (what === 'profiles' || what === 'palettes') void this.#fetch();
      },
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#fetch();
  }

  async #fetch(): Promise<void> {
    await this.#history.run((signal) => call('listProfiles', { signal }));
  }

  override render() {
    const t = profileWords();
    const palette = this.#palette.value;
    this.#stands ||= palette.status !== 'pending';
    return html`<tl-page
      heading=${t.title}
      ?waiting=${!this.#stands}
      lead=${t.lead}
      .terms=${['profile', 'constants', 'palette', 'geometry']}
    >
      ${
        palette.status === 'open' && !this.looking
          ? html`<tl-next
              slot="next"
              label=${t.export}
              hint=${t.exportHint}
              href=${this.#file(palette.summary.id, 'json')}
            ></tl-next>`
          : palette.status === 'none' && !this.looking
            ? html`<tl-next slot="next" label=${t.toLadder} href=${linkTo('ladder')}></tl-next>`
            : nothing
      }
      ${palette.status === 'pending' ? html`<tl-progress label=${t.fetching}></tl-progress>` : nothing}
      ${palette.status === 'error' ? html`<tl-notice kind="error" live>${palette.error.message}</tl-notice>` : nothing}
      ${palette.status === 'none' ? html`<tl-empty heading=${t.none}><p>${t.noneHow}</p></tl-empty>` : nothing}
      ${palette.status === 'open' ? this.#now(palette) : nothing}
      ${
        // What lies below waits for what stands above it, so that nothing moves down under a finger.
        this.#stands ? this.#below() : nothing
      }
    </tl-page>`;
  }

  #below() {
    const t = profileWords();
    return html`<section class="stack">
        <h2>${t.import}</h2>
        <tl-profile-import
          @tl-looking=${(e: CustomEvent<boolean>) => (this.looking = e.detail)}
          @tl-imported=${() => void this.#fetch()}
        ></tl-profile-import>
      </section>
      ${this.#replace()}
      ${this.failed ? html`<tl-notice kind="error" live>${this.failed}</tl-notice>` : nothing} ${this.#past()}`;
  }

  #replace() {
    const palette = this.#palette.value;
    if (palette.status !== 'open') return nothing;
    return html`<section class="stack">
      <h2>${replaceWords().title}</h2>
      <tl-tube-replace
        .profile=${palette.profile}
        .summary=${palette.summary}
        .asked=${this.route?.args[0] === 'replace' ? (this.route.args[1] ?? '') : ''}
        @tl-replaced=${() => void this.#fetch()}
      ></tl-tube-replace>
    </section>`;
  }

  #now({ profile, summary }: Opened) {
    const t = profileWords();
    const kinds = [
      ...new Set(
        profile.tubes.flatMap((tube) =>
          tube.evidence ? [constantsWords().kinds[tube.evidence.readings]] : [],
        ),
      ),
    ];
    return html`<section class="stack">
        <h2>${t.now}</h2>
        <p>${summary.title}, ${t.madeFrom[summary.origin]}</p>
        <tl-figures
          .figures=${[
            {
              name: t.tubes,
              figure: num(profile.tubes.length, 0),
              means: profile.tubes.map((tube) => tube.label).join(', '),
            },
            { name: t.geometry, figure: profile.geometry },
            ...(kinds.length > 0 ? [{ name: t.readings, figure: kinds.join(', ') }] : []),
            { name: t.created, figure: when(profile.created, false) },
          ]}
        ></tl-figures>
      </section>
      <div class="pair">
        <section class="stack">
          <h2>${t.formats}</h2>
          <div class="formats">
            ${FORMATS.map((format) => html`<a href=${this.#file(summary.id, format)} download>${t[format]}</a>`)}
          </div>
          <label class="tick"
            ><input
              type="checkbox"
              .checked=${this.makers}
              @change=${(e: Event) => (this.makers = (e.target as HTMLInputElement).checked)}
            />${t.makers}</label
          >
          <p class="small">${t.makersHelp} ${t.format}</p>
        </section>
        <section class="stack">
          <h2>${t.sets}</h2>
          <p>${t.setsHow}</p>
          <p>
            <a href=${urlOf('exportSwatchSet', { paletteId: summary.paletteId })} download>${t.setLink}</a>
          </p>
        </section>
      </div>`;
  }

  #past() {
    const t = profileWords();
    const history = this.#history.value ?? [];
    if (history.length === 0) return nothing;
    return html`<section class="stack">
        <h2>${t.history}</h2>
        <ul class="history">
          ${history.map(
            (p) =>
              html`<li>
                <div>
                  <b>${p.title}</b>
                  <p>
                    ${when(p.createdAt)}, ${t.madeFrom[p.origin]}, ${t.tubeCount(num(p.tubeLabels.length, 0))}
                  </p>
                </div>
                ${
                  p.current
                    ? html`<span><b>${t.current}</b></span>`
                    : html`<button type="button" @click=${() => void this.#use(p)}>${t.use}</button>`
                }
              </li>`,
          )}
        </ul>
      </section>
      <section class="stack">
        <h2>${t.compare}</h2>
        <tl-profile-compare .profiles=${history}></tl-profile-compare>
      </section>`;
  }

  #file(profileId: string, format: (typeof FORMATS)[number]): string {
    return urlOf('downloadProfile', { profileId }, { format, makers: this.makers ? 'true' : 'false' });
  }

  async #use(profile: ProfileSummary): Promise<void> {
    this.failed = '';
    try {
      await call('makeProfileCurrent', { params: { profileId: profile.id } });
      say(profileWords().used(profile.title));
      await this.#fetch();
    } catch (cause) {
      this.failed = cause instanceof Error ? said(cause.message) : String(cause);
    }
  }
}
define('tl-profile-screen', TlProfileScreen);
