import { css, html, nothing } from 'lit';
import type { TypedReading } from '../../../../server/api/readings.ts';
import type { Afresh, Masses } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { patchOfLab } from '../../design/patch.ts';
import '../../parts/compare.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { ScaleController } from '../../state/scale.ts';
import { splitWords } from '../../text/differences.ts';
import { mixingWords } from '../../text/mixing.ts';
import { grams, num } from '../../text/numbers.ts';
import type { AdditionAnswer } from '../../workers/match-job.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import '../ladder/typed-entry.ts';
import { type WantedColour, asWanted, changeTable, mixTable, withPreTints } from './mix-state.ts';
import { firstMix, labelIn } from './pour-words.ts';
import { colourOfTyped, readUnderHead } from './read-pile.ts';
import { said } from '../../text/said.ts';

/** A pile that came out wrong: read it, and see what to add. Nothing is taken out. */
export class TlAdditionPanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    wanted: { attribute: false },
    masses: { attribute: false },
    headReady: { type: Boolean },
    read: { state: true },
    weighs: { state: true },
    refusal: { state: true },
  };
  declare profile: PaletteProfile;
  declare wanted: WantedColour;
  declare masses: Masses;
  declare headReady: boolean;
  /** The pile as it was read; the grams speak alone until then. */
  declare read: WantedColour | undefined;
  /** Grams of a pile that is known by its reading alone. */
  declare weighs: number;
  declare refusal: string;
  readonly #scale = new ScaleController(this);
  readonly #answer = new RemoteController<AdditionAnswer>(this);

  static override styles = [
    TlElement.styles,
    css`
      ul {
        list-style: none;
        padding: 0;
        display: grid;
        gap: var(--s2);
        max-inline-size: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 4px var(--s2);
        align-items: center;
        border-block-end: var(--rule);
        padding-block-end: 10px;
      }
      li b {
        font-size: var(--t-lead);
        line-height: 1.25;
      }
      .weighs {
        max-inline-size: 15rem;
      }
      summary {
        min-block-size: var(--target);
        align-content: center;
        font-weight: 650;
        cursor: pointer;
      }
    `,
  ];

  constructor() {
    super();
    this.headReady = false;
    this.read = undefined;
    this.weighs = 20;
    this.refusal = '';
  }

  get #known(): boolean {
    return Object.values(this.masses).some((g) => g > 0);
  }

  override render() {
    const t = mixingWords();
    const answer = this.#answer.value;
    return html`<section class="stack">
      <h2>${t.addition}</h2>
      <p>${this.#known ? t.additionHow : t.additionUnknown}</p>
      ${
        this.#known
          ? nothing
          : html`<tl-field
              class="weighs"
              kind="number"
              label=${t.pileWeighs}
              unit="g"
              min="0.1"
              max="10000"
              .value=${num(this.weighs, 1)}
              @tl-change=${(e: CustomEvent<FieldChange>) => {
                if (e.detail.number !== undefined) this.weighs = e.detail.number;
              }}
            ></tl-field>`
      }
      <div class="row">
        ${this.headReady ? html`<button type="button" @click=${this.#readHead}>${t.readIt}</button>` : nothing}
        ${
          this.#known || this.read
            ? html`<button type="button" @click=${() => void this.#work(this.read)}>${t.work}</button>`
            : nothing
        }
      </div>
      <details ?open=${!this.#known && !this.headReady}>
        <summary>${t.typed}</summary>
        <tl-typed-entry
          label=${t.work}
          @tl-typed-reading=${(e: CustomEvent<TypedReading>) => void this.#work(colourOfTyped(e.detail))}
        ></tl-typed-entry>
      </details>
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${this.#answer.error ? html`<tl-notice kind="error" live>${said(this.#answer.error.message)}</tl-notice>` : nothing}
      ${this.#answer.pending ? html`<tl-progress label=${t.finding}></tl-progress>` : nothing}
      ${answer ? this.#found(answer) : nothing}
    </section>`;
  }

  #found(answer: AdditionAnswer) {
    const t = mixingWords();
    return html`${
        this.read
          ? html`<tl-compare
              .patches=${[patchOfLab(this.wanted.lab), patchOfLab(this.read.lab)]}
              .names=${[t.want, t.pileLab]}
            ></tl-compare>`
          : nothing
      }
      ${answer.pile.estimated ? html`<p>${t.pileHolds(this.#grams(answer.pile.masses), num(answer.pile.misfit ?? 0, 1))}</p>` : nothing}
      <p>${this.read ? t.asRead : t.asMade} ${splitWords(answer.now)}.</p>
      ${
        answer.afresh.wastesLess
          ? html`<tl-notice kind="warning"
                >${t.afresh}
                ${t.afreshIs(this.#afresh(answer.afresh), num(answer.afresh.deltaE00, 1))}</tl-notice
              >
              <div>
                <button type="button" @click=${() => this.#start(answer.afresh)}>${t.startAfresh}</button>
              </div>`
          : nothing
      }
      ${
        answer.nearEnough
          ? html`<p><b>${said(answer.sentence)}</b></p>
              ${
                answer.additions.length > 0
                  ? html`<details>
                      <summary>${t.nearer}</summary>
                      ${this.#additions(answer)}
                    </details>`
                  : nothing
              }`
          : html`<h3>${t.added}</h3>
              ${answer.additions.length === 0 ? html`<p>${said(answer.sentence)}</p>` : this.#additions(answer)}`
      }`;
  }

  #additions(answer: AdditionAnswer) {
    const t = mixingWords();
    return html`<ul>
      ${answer.additions.map(
        (addition) =>
          html`<li>
            <div>
              <b>${this.#grams(addition.add)}</b>
              <p class="small">${splitWords(addition.split)}, ${num(addition.deltaE00, 1)} (CIEDE2000)</p>
            </div>
            <button type="button" @click=${() => this.#putIn(answer, addition.add)}>${t.putIn}</button>
          </li>`,
      )}
    </ul>`;
  }

  #grams(masses: Masses): string {
    return Object.entries(masses)
      .sort(([, p], [, q]) => q - p)
      .map(([id, g]) => `${grams(g, this.#scale.value.resolution)} ${labelIn(this.profile, id)}`)
      .join(', ');
  }

  #afresh({ masses, preTints }: Afresh): string {
    const t = mixingWords();
    const { resolution } = this.#scale.value;
    const tints = preTints.map(
      ({ strong, pour }) => `${grams(pour, resolution)} ${t.thePreTint(labelIn(this.profile, strong))}`,
    );
    const first = preTints.map((tint) => firstMix(tint, this.profile, resolution));
    return [...first, [this.#grams(masses), ...tints].join(', ')].join(' ');
  }

  #start({ masses, preTints }: Afresh): void {
    changeTable({ masses: withPreTints(masses, preTints), preTints });
  }

  readonly #readHead = async (): Promise<void> => {
    this.refusal = '';
    try {
      await this.#work(await readUnderHead());
    } catch (cause) {
      this.refusal = cause instanceof Error ? said(cause.message) : String(cause);
    }
  };

  async #work(read: WantedColour | undefined): Promise<void> {
    this.read = read;
    const { priority } = mixTable();
    const scale = this.#scale.value;
    const pile = this.#known ? { masses: this.masses } : { grams: this.weighs };
    await this.#answer.run((signal) =>
      searchBench.run(
        'addition',
        {
          pile: { ...pile, ...(read ? { reading: asWanted(read) } : {}) },
          wanted: asWanted(this.wanted),
          options: { priority, scale },
        },
        { signal },
      ),
    );
  }

  #putIn({ pile }: AdditionAnswer, add: Masses): void {
    const masses: Record<string, number> = { ...pile.masses };
    for (const [id, g] of Object.entries(add)) masses[id] = (masses[id] ?? 0) + g;
    this.read = undefined;
    changeTable({ masses });
  }
}
define('tl-addition-panel', TlAdditionPanel);
