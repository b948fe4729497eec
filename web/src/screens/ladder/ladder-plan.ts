import { css, html, nothing } from 'lit';
import type { StartLadder } from '../../../../server/api/ladders.ts';
import type { Tube } from '../../../../server/api/tubes.ts';
import { type Answer, call } from '../../api/call.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import '../../parts/progress.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { BenchState } from '../../state/bench-state.ts';
import { RemoteController } from '../../state/remote.ts';
import { ladderWords } from '../../text/ladder.ts';
import { num } from '../../text/numbers.ts';
import { ratioSigma } from './planned-rung.ts';
import './ladder-card.ts';
import { rungName } from './target.ts';

type Set = 'full' | 'short' | 'long';
const RUNGS: Readonly<Record<Set, number[]>> = {
  full: [0, 1, 4, 16],
  short: [0, 4],
  long: [0, 1, 4, 16, 64],
};
type Plan = Answer<'planLadder'>;

/** Before the first pour: how much of what, for this scale. Sends `tl-plan` with the plan, for the next step. */
export class TlLadderPlan extends TlElement {
  static override properties = { tube: { attribute: false }, asked: { state: true } };
  declare tube: Tube;
  declare asked: Partial<StartLadder> & { rungs?: Set };

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s4);
      }
      details {
        border-block-start: var(--edge);
      }
      .ask {
        padding-block: var(--s2);
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 16rem), 1fr));
        gap: var(--s3);
        align-items: start;
      }
      ul {
        padding-inline-start: 1.2em;
      }
      button {
        justify-self: start;
      }
      @media print {
        :host {
          display: block;
        }
      }
    `,
  ];
  readonly #bench = new BenchState(this);
  readonly #plan = new RemoteController<Plan>(this);
  #wait: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.asked = {};
  }

  /** What the ladder would be started with. */
  get request(): StartLadder {
    const s = this.#bench.value?.settings;
    const { rungs = 'full', ...asked } = this.asked;
    return {
      tubeId: this.tube.id,
      scaleResolution: s?.scaleResolution ?? 0.01,
      smallestPour: s?.smallestPour ?? 0.5,
      repeats: s?.repeats ?? 3,
      whiteParts: this.tube.role === 'white' ? [0] : RUNGS[rungs],
      ...asked,
    };
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#ask(0);
  }

  #change(change: TlLadderPlan['asked']): void {
    this.asked = { ...this.asked, ...change };
    this.#ask(250);
  }

  #ask(after: number): void {
    clearTimeout(this.#wait);
    this.#wait = setTimeout(() => {
      void this.#plan
        .run((signal) => call('planLadder', { body: this.request, signal }))
        .then((plan) => {
          if (plan) this.dispatchEvent(new CustomEvent<Plan>('tl-plan', { detail: plan }));
          else if (this.#plan.error) this.dispatchEvent(new CustomEvent('tl-no-plan'));
        });
    }, after);
  }

  override render() {
    const t = ladderWords();
    const now = this.request;
    const plan = this.#plan.value;
    const white = this.tube.role === 'white';
    return html`
      ${this.#plan.error ? html`<tl-notice kind="error" live>${this.#plan.error.message}</tl-notice>` : nothing}
      ${
        plan
          ? html`<tl-ladder-card
                label=${this.tube.label}
                .plan=${plan.plan}
                .rungs=${plan.rungs}
              ></tl-ladder-card>
              ${white ? nothing : this.#says(plan)}
              <button type="button" @click=${() => print()}>${t.print}</button>`
          : this.#plan.error
            ? nothing
            : html`<tl-progress></tl-progress>`
      }
      ${plan || this.#plan.error ? this.#ways(now) : nothing}
    `;
  }

  #ways(now: StartLadder) {
    const t = ladderWords();
    const white = this.tube.role === 'white';
    return html`<details class="no-print" ?open=${this.#plan.error !== undefined}>
      <summary>${t.changePlan}</summary>
      <div class="ask no-print">
        ${
          white
            ? nothing
            : html`<tl-choice
                  label=${t.rungs}
                  .options=${(['full', 'short', 'long'] as const).map((value) => ({
                    value,
                    label: t.rungSets[value],
                  }))}
                  .value=${this.asked.rungs ?? 'full'}
                  @tl-choose=${(e: CustomEvent<Set>) => this.#change({ rungs: e.detail })}
                ></tl-choice>
                <tl-choice
                  label=${t.scale}
                  .options=${[0.1, 0.01, 0.001].map((g, i) => ({ value: String(g), label: `${num(g, i + 1)} g` }))}
                  .value=${String(now.scaleResolution)}
                  @tl-choose=${(e: CustomEvent<string>) =>
                    this.#change({ scaleResolution: Number(e.detail) })}
                ></tl-choice>
                <tl-choice
                  label=${t.method}
                  .options=${(['least paint', 'straight', 'serial'] as const).map((value) => ({
                    value,
                    label: t.methods[value],
                  }))}
                  .value=${now.method ?? 'least paint'}
                  @tl-choose=${(e: CustomEvent<NonNullable<StartLadder['method']>>) =>
                    this.#change({ method: e.detail })}
                ></tl-choice>
                ${this.#number('smallestPour', t.smallest, 'g', now.smallestPour ?? 0.5, 2, 0.01, 100)}`
        }
        ${this.#number('perRung', t.perRung, 'g', now.perRung ?? 2, 1, 0.1, 200)}
        ${this.#number('repeats', t.repeats, '', now.repeats ?? 3, 0, 1, 20)}
        <tl-choice
          label=${t.films}
          .options=${[
            { value: '', label: t.no },
            { value: 'yes', label: t.yes },
          ]}
          .value=${now.cardFilms ? 'yes' : ''}
          @tl-choose=${(e: CustomEvent<string>) => this.#change({ cardFilms: e.detail === 'yes' })}
        ></tl-choice>
      </div>
    </details>`;
  }

  /** What the plan costs and what limits it. */
  #says({ plan, rungs }: Plan) {
    const t = ladderWords();
    const worst = rungs
      .filter((r) => r.parts.length > 1)
      .toSorted((a, b) => ratioSigma(b) - ratioSigma(a))[0];
    return html`<ul class="no-print">
      <li>${t.methodUsed[plan.method]}</li>
      ${worst ? html`<li>${t.worst(rungName(worst), num(100 * ratioSigma(worst), 1))}</li>` : nothing}
      <li>${t.dontChase}</li>
    </ul>`;
  }

  #number(
    key: 'smallestPour' | 'perRung' | 'repeats',
    label: string,
    unit: string,
    value: number,
    decimals: number,
    min: number,
    max: number,
  ) {
    return html`<tl-field
      kind="number"
      required
      label=${label}
      unit=${unit}
      min=${min}
      max=${max}
      .value=${num(value, decimals)}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        const typed = e.detail.number;
        if (typed === undefined || typed === this.request[key]) return;
        this.#change({ [key]: key === 'repeats' ? Math.round(typed) : typed });
      }}
    ></tl-field>`;
  }
}
define('tl-ladder-plan', TlLadderPlan);
