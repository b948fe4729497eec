import { css, html, nothing } from 'lit';
import type { Masses, WholeParts } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/choice.ts';
import '../../parts/notice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import { said } from '../../text/said.ts';
import { searchBench } from '../../workers/palette-controller.ts';
import type { PartsAnswer } from '../../workers/parts-jobs.ts';
import { type WantedColour, asWanted, changeTable } from './mix-state.ts';
import { labelIn } from './pour-words.ts';

type Basis = 'mass' | 'volume';

/** The pile's tubes counted out in small whole parts, by mass, or by volume where densities are known. */
export class TlPartsPanel extends TlElement {
  static override properties = {
    profile: { attribute: false },
    masses: { attribute: false },
    wanted: { attribute: false },
    basis: { state: true },
  };
  declare profile: PaletteProfile;
  declare masses: Masses;
  declare wanted: WantedColour | undefined;
  declare basis: Basis;
  #for: Masses | undefined;
  readonly #found = new RemoteController<PartsAnswer | undefined>(this);

  static override styles = [
    TlElement.styles,
    css`
      ul {
        list-style: none;
        padding: 0;
        display: grid;
        gap: var(--s1);
        max-inline-size: 52rem;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 4px var(--s2);
        align-items: center;
        border-block-end: var(--rule);
        padding-block: 6px;
      }
      .row {
        align-items: end;
      }
    `,
  ];

  constructor() {
    super();
    this.basis = 'mass';
  }

  override willUpdate(): void {
    // Parts of another pile say nothing of this one.
    if (this.#for && this.#for !== this.masses) {
      this.#for = undefined;
      this.#found.set(undefined);
    }
  }

  override render() {
    const t = mixingWords();
    const found = this.#found.value;
    return html`<section class="stack">
      <h2>${t.counted}</h2>
      <p>${t.countedHow}</p>
      <div class="row">
        <tl-choice
          label=${t.countedBy}
          .value=${this.basis}
          .options=${(['mass', 'volume'] as const).map((value) => ({ value, label: t.bases[value] }))}
          @tl-choose=${(e: CustomEvent<Basis>) => {
            this.basis = e.detail;
            if (this.#for) void this.#count();
          }}
        ></tl-choice>
        <button type="button" @click=${() => void this.#count()}>${t.count}</button>
      </div>
      ${this.#found.error ? html`<tl-notice kind="error" live>${said(this.#found.error.message)}</tl-notice>` : nothing}
      <ul aria-live="polite">
        ${(found ?? []).map((one) => this.#one(one))}
      </ul>
    </section>`;
  }

  #one(one: WholeParts) {
    const t = mixingWords();
    const parts = Object.entries(one.parts).sort(([, p], [, q]) => q - p);
    return html`<li>
      <div>
        <b>${parts.map(([id, k]) => `${num(k, 0)} ${labelIn(this.profile, id)}`).join(' : ')}</b>
        <p class="small">${t.countedOff(num(one.total, 0), num(one.deltaE00, 1))}</p>
      </div>
      <button type="button" @click=${() => this.#put(one)}>${t.put}</button>
    </li>`;
  }

  #densities(): Masses {
    return Object.fromEntries(
      this.profile.tubes.flatMap((tube) => (tube.density === undefined ? [] : [[tube.id, tube.density]])),
    );
  }

  async #count(): Promise<void> {
    const { masses, wanted, basis } = this;
    this.#for = masses;
    const used = Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0));
    await this.#found.run((signal) =>
      searchBench.run(
        'parts',
        {
          masses: used,
          basis,
          densities: this.#densities(),
          ...(wanted ? { wanted: asWanted(wanted) } : {}),
        },
        { signal },
      ),
    );
  }

  /** Parts as grams of the amount on the table; by volume each part weighs by its density. */
  #put({ parts, basis }: WholeParts): void {
    const densities = this.#densities();
    const weigh = Object.entries(parts).map(
      ([id, k]) => [id, k * (basis === 'volume' ? (densities[id] ?? 1) : 1)] as const,
    );
    const sum = weigh.reduce((total, [, m]) => total + m, 0);
    const all = Object.values(this.masses).reduce((total, g) => total + g, 0);
    changeTable({ masses: Object.fromEntries(weigh.map(([id, m]) => [id, (m / sum) * all])) });
  }
}
define('tl-parts-panel', TlPartsPanel);
