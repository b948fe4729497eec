import { type PropertyValues, css, html, nothing } from 'lit';
import type { ProfileSummary } from '../../../../server/api/profiles.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { type Answer, type Body, call } from '../../api/call.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { replaceWords } from '../../text/replace.ts';
import { keptRecipes } from './kept-recipes.ts';
import './replaced-view.ts';
import { said } from '../../text/said.ts';

type Replaced = Answer<'replaceTube'>;
const FROM_FILE = ' file';

/** A new tube in an old one's place: choose both, look at what changes, then put it there. */
export class TlTubeReplace extends TlElement {
  static override properties = {
    profile: { attribute: false },
    summary: { attribute: false },
    asked: { attribute: false },
    old: { state: true },
    now: { state: true },
    name: { state: true },
    refusal: { state: true },
  };
  declare profile: PaletteProfile;
  declare summary: ProfileSummary;
  /** Tube of the rack whose replacement was asked for there; empty where none was. */
  declare asked: string;
  declare old: string;
  /** Id of a tube of the rack, or FROM_FILE. */
  declare now: string;
  declare name: string;
  declare refusal: string;
  #file: File | undefined;
  readonly #rack = new RemoteController<Answer<'listTubes'>>(this);
  readonly #look = new RemoteController<Replaced | undefined>(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
        justify-items: start;
      }
      :host > * {
        max-inline-size: 100%;
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 16rem), 1fr));
        gap: var(--s2);
        inline-size: 100%;
        max-inline-size: 44rem;
      }
      .file {
        display: grid;
        gap: 4px;
        font-weight: 650;
      }
      .file input {
        border: var(--edge);
        background: var(--raised);
        padding: 10px;
        min-block-size: var(--target);
        inline-size: 100%;
        font-weight: 400;
      }
      tl-replaced {
        inline-size: 100%;
      }
    `,
  ];

  constructor() {
    super();
    this.asked = '';
    this.old = '';
    this.now = '';
    this.name = '';
    this.refusal = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#rack.run((signal) => call('listTubes', { signal }));
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('asked') && this.asked) this.old = this.asked;
  }

  override firstUpdated(): void {
    if (this.asked) this.scrollIntoView();
  }

  /** Tubes that can be replaced: all but the white, which every tint rests on. */
  get #olds(): PaletteProfile['tubes'] {
    return this.profile.tubes.filter((tube) => tube.id !== this.profile.white);
  }

  override render() {
    const t = replaceWords();
    const olds = this.#olds;
    const old = olds.find((tube) => tube.id === this.old) ?? olds[0];
    if (!old) return nothing;
    const inUse = new Set(this.profile.tubes.map((tube) => tube.id));
    const fresh = (this.#rack.value ?? []).filter(
      (tube) => !inUse.has(tube.id) && tube.known.stage !== 'not measured',
    );
    const nows = [
      ...fresh.map((tube) => ({ value: tube.id, label: tube.label })),
      { value: old.id, label: t.again },
      { value: FROM_FILE, label: t.fromFile },
    ];
    const now = nows.find((o) => o.value === this.now)?.value ?? nows[0]!.value;
    const look = this.#look.value;
    return html`<p>${t.how}</p>
      <div class="two">
        <tl-field
          label=${t.old}
          .value=${old.id}
          .options=${olds.map((tube) => ({ value: tube.id, label: tube.label }))}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#choose({ old: e.detail.text })}
        ></tl-field>
        <tl-field
          label=${t.now}
          .value=${now}
          .options=${nows}
          @tl-change=${(e: CustomEvent<FieldChange>) => this.#choose({ now: e.detail.text })}
        ></tl-field>
        ${now === FROM_FILE ? this.#fromFile(old.label) : nothing}
      </div>
      <button
        type="button"
        ?disabled=${this.#look.pending}
        @click=${() => void this.#ask(old, now, nows.find((o) => o.value === now)!.label, false)}
      >
        ${t.look}
      </button>
      ${this.#look.pending ? html`<tl-progress label=${t.looking}></tl-progress>` : nothing}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${
        look && !this.#look.pending && look.profileId === null
          ? html`<tl-replaced
                .replaced=${look}
                .profile=${this.profile}
                .old=${old.id}
                newLabel=${this.#label(old.label, now, nows)}
              ></tl-replaced>
              <div>
                <button
                  type="button"
                  @click=${() => void this.#ask(old, now, nows.find((o) => o.value === now)!.label, true)}
                >
                  ${t.put}
                </button>
                <p class="small">${t.putHow}</p>
              </div>`
          : nothing
      }`;
  }

  #fromFile(label: string) {
    const t = replaceWords();
    return html`<label class="file"
        >${t.file}
        <input
          type="file"
          accept=".json,.csv,.txt,.cgats"
          @change=${(e: Event) => {
            this.#file = (e.target as HTMLInputElement).files?.[0];
            this.#choose({});
          }}
        />
      </label>
      <tl-field
        label=${t.name}
        .value=${this.name || label}
        @tl-change=${(e: CustomEvent<FieldChange>) => (this.name = e.detail.text)}
      ></tl-field>`;
  }

  #choose(change: { old?: string; now?: string }): void {
    if (change.old !== undefined) this.old = change.old;
    if (change.now !== undefined) this.now = change.now;
    this.refusal = '';
    // What was said of other tubes says nothing of these.
    this.#look.set(undefined);
  }

  #label(old: string, now: string, nows: readonly { value: string; label: string }[]): string {
    if (now === FROM_FILE) return this.name || old;
    return now === this.old || nows.find((o) => o.value === now)?.label === replaceWords().again
      ? old
      : (nows.find((o) => o.value === now)?.label ?? old);
  }

  async #ask(old: PaletteProfile['tubes'][number], now: string, label: string, keep: boolean): Promise<void> {
    this.refusal = '';
    const t = replaceWords();
    const sameTube = now === old.id;
    const tube =
      now === FROM_FILE
        ? { id: newTubeId(old.id, this.profile), label: this.name || old.label }
        : { id: now, label: sameTube ? old.label : label };
    try {
      if (now === FROM_FILE && !this.#file) throw new Error(t.noFile);
      const body: Body<'replaceTube'> = {
        oldTubeId: old.id,
        file:
          now === FROM_FILE
            ? { fileName: this.#file!.name, text: await this.#file!.text() }
            : await this.#readings(),
        tube,
        ...(now === FROM_FILE ? {} : { inSet: now }),
        oldTube: 'where it helps',
        recipes: await keptRecipes(old.id),
        keep,
      };
      const answer = await this.#look.run(async (signal) =>
        call('replaceTube', { params: { profileId: this.summary.id }, body, signal }),
      );
      if (this.#look.error) throw this.#look.error;
      if (answer && keep) {
        say(t.done(tube.label));
        this.#choose({ old: '', now: '' });
        this.dispatchEvent(new CustomEvent('tl-replaced', { bubbles: true }));
      }
    } catch (cause) {
      this.refusal = cause instanceof Error ? said(cause.message) : String(cause);
    }
  }

  /** Everything read for this palette, the short ladder among it. */
  async #readings(): Promise<{ fileName: string; text: string }> {
    const set = await call('exportSwatchSet', { params: { paletteId: this.summary.paletteId } });
    return { fileName: 'rack.json', text: JSON.stringify(set) };
  }
}

/** An id no tube of the profile has. */
function newTubeId(old: string, profile: PaletteProfile): string {
  const taken = new Set(profile.tubes.map((tube) => tube.id));
  for (let n = 2; ; n++) if (!taken.has(`${old}-${n}`)) return `${old}-${n}`;
}
define('tl-tube-replace', TlTubeReplace);
