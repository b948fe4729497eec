import { css, html } from 'lit';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { EdgeMix } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { type Patch, onThisScreen } from '../../design/patch.ts';
import '../../parts/choice.ts';
import '../../parts/drawdown.ts';
import '../../parts/figures.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';
import type { LimitsAnswer } from '../../workers/limits-jobs.ts';

/** The drawings come while the search runs. Where one cannot be had, the numbers stand without it. */
export const limitsCharts = Promise.allSettled([
  import('../../charts/hue-reach.ts'),
  import('../../charts/neutral-line.ts'),
  import('../../charts/turntable.ts'),
  import('../../charts/value-slice.ts'),
]);

const paintOf = (lab: Lab): string => onThisScreen(lab).css;

/** What a choice of tubes reaches, from its ends to its whole body. */
export class TlLimitsView extends TlElement {
  static override properties = {
    profile: { attribute: false },
    only: { attribute: false },
    answer: { attribute: false },
    masstones: { attribute: false },
    sliceAt: { state: true },
  };
  declare profile: PaletteProfile;
  declare only: readonly string[];
  declare answer: LimitsAnswer;
  declare masstones: ReadonlyMap<string, Patch>;
  declare sliceAt: number;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s5);
      }
      .ends {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 22rem), 1fr));
        gap: var(--s3);
        --card-ratio: 8 / 4;
      }
      .ends > div {
        display: grid;
        gap: 8px;
        align-content: start;
      }
      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 30rem), 1fr));
        gap: var(--s4) var(--s5);
        align-items: start;
      }
      /* One under the other, so that what is written in a chart stays large enough to read. */
      @media print {
        :host,
        .pair {
          display: block;
        }
        .ends {
          grid-template-columns: repeat(3, minmax(0, 1fr));
        }
        :host > * + *,
        .pair > * + * {
          margin-block-start: var(--s4);
        }
      }
    `,
  ];

  constructor() {
    super();
    this.masstones = new Map();
    this.sliceAt = 5;
  }

  override render() {
    const t = limitsWords();
    const { limits } = this.answer;
    return html`<section class="stack">
        <h2>${t.ends}</h2>
        <div class="ends">
          ${this.#end(t.darkest, limits.darkest)} ${this.#end(t.lightest, limits.lightest)}
        </div>
        <tl-figures
          .figures=${[{ name: t.volume, figure: num(limits.volume / 1000, 0) + ' 000', means: t.volumeMeans }]}
        ></tl-figures>
      </section>
      ${this.#neutral()}
      <tl-hue-reach
        heading=${t.hues}
        summary=${t.huesSays}
        .points=${limits.strongest.map((s) => ({
          hue: s.hue,
          chroma: s.chroma,
          value: s.value,
          paint: paintOf(s.lab),
          recipe: this.#recipe(s),
        }))}
      ></tl-hue-reach>
      <div class="pair">${this.#turntable()} ${this.#slice()}</div>`;
  }

  #end(heading: string, mix: EdgeMix) {
    return html`<div>
      <tl-drawdown size="fill" heading=${heading} .patch=${{ lab: mix.lab, value: mix.value }}></tl-drawdown>
      <p>${this.#recipe(mix)}</p>
    </div>`;
  }

  #neutral() {
    const t = limitsWords();
    const { limits } = this.answer;
    return html`<tl-neutral-line
      heading=${t.neutral}
      summary=${t.neutralSays}
      .tubes=${this.only.map((id) => ({ label: this.#label(id), paint: this.#stone(id) }))}
      .steps=${limits.neutrals.map((n) => ({
        value: n.value,
        chroma: n.chroma,
        lean: n.lean,
        paint: paintOf(n.lab),
        shares: this.only.map((id) => n.shares[id] ?? 0),
      }))}
      .reach=${limits.leans.map((l) => ({
        value: l.value,
        coolest: { lean: l.coolest.lean, paint: paintOf(l.coolest.lab) },
        warmest: { lean: l.warmest.lean, paint: paintOf(l.warmest.lab) },
      }))}
    ></tl-neutral-line>`;
  }

  #turntable() {
    const t = limitsWords();
    return html`<tl-turntable
      heading=${t.turn}
      summary=${t.turnSays}
      .body=${this.answer.body}
      .marks=${this.only.flatMap((id) => {
        const stone = this.masstones.get(id);
        return stone
          ? [
              {
                label: this.#label(id),
                paint: this.#stone(id),
                L: stone.lab.L,
                a: stone.lab.a,
                b: stone.lab.b,
              },
            ]
          : [];
      })}
    ></tl-turntable>`;
  }

  #slice() {
    const t = limitsWords();
    const { slices } = this.answer.limits;
    const slice = slices.reduce(
      (best, s) =>
        !best || Math.abs(s.value - this.sliceAt) < Math.abs(best.value - this.sliceAt) ? s : best,
      slices[0],
    );
    const reach = Math.max(30, ...slices.flatMap((s) => s.edge.map((e) => e.chroma)));
    if (!slice) return '';
    return html`<div class="stack">
      <tl-value-slice
        heading=${t.slice(num(slice.value, 1))}
        summary=${t.sliceSays}
        .reach=${Math.ceil(reach / 10) * 10}
        .edge=${slice.edge.map(({ hue, chroma }) => this.#edge(slice.value, hue, chroma))}
      ></tl-value-slice>
      <tl-choice
        label=${t.sliceAt}
        .value=${String(slice.value)}
        .options=${slices
          .filter((s) => Number.isInteger(s.value))
          .map((s) => ({ value: String(s.value), label: num(s.value, 0) }))}
        @tl-choose=${(e: CustomEvent<string>) => (this.sliceAt = Number(e.detail))}
      ></tl-choice>
    </div>`;
  }

  #edge(value: number, hue: number, chroma: number) {
    const h = (hue * Math.PI) / 180;
    const [a, b] = [chroma * Math.cos(h), chroma * Math.sin(h)];
    // L* of a value is close to ten times the value; the mark's colour asks for no more.
    const lab: Lab = { L: 10 * value + 1, a, b, white: this.answer.limits.white };
    return { label: limitsWords().edgeAt(num(hue, 0)), paint: paintOf(lab), a, b };
  }

  #recipe(mix: Pick<EdgeMix, 'shares'>): string {
    return Object.entries(mix.shares)
      .filter(([, share]) => share > 0.001)
      .sort(([, p], [, q]) => q - p)
      .map(([id, share]) => `${this.#label(id)} ${num(100 * share, 1)} %`)
      .join(', ');
  }

  #label(id: string): string {
    return this.profile.tubes.find((tube) => tube.id === id)?.label ?? id;
  }

  #stone(id: string): string {
    const stone = this.masstones.get(id);
    return stone ? paintOf(stone.lab) : '#777777';
  }
}
define('tl-limits-view', TlLimitsView);
