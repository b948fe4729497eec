import { html } from 'lit';
import { PRIORITIES, type Priority } from '../../../../src/mix/index.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { mixingWords } from '../../text/mixing.ts';
import { num } from '../../text/numbers.ts';
import type { MixTable, WantedColour } from './mix-state.ts';
import './scale-fields.ts';
import './wanted-form.ts';

/** How a colour is asked for; a change of it asks again. */
export type Asked = Partial<Pick<MixTable, 'priority' | 'maxTubes' | 'amount'>>;

export interface WantedActs {
  readonly headReady: boolean;
  readonly want: (wanted: WantedColour | undefined) => void;
  readonly ask: (change: Asked) => void;
}

/** The wanted colour, and what recipes for it are held to. */
export function wantedView({ priority, maxTubes, amount, wanted }: MixTable, acts: WantedActs) {
  const t = mixingWords();
  const inOrder = (['value', 'evenly', 'hue'] as const).filter((p) => PRIORITIES.includes(p));
  return html`<section class="stack" id="wanted">
    <h2 tabindex="-1">${t.wanted}</h2>
    <tl-wanted-form
      .headReady=${acts.headReady}
      .wanted=${wanted}
      @tl-wanted=${(e: CustomEvent<WantedColour | undefined>) => acts.want(e.detail)}
    ></tl-wanted-form>
    <div class="asked">
      <tl-choice
        label=${t.priority}
        .value=${priority}
        .options=${inOrder.map((value) => ({ value, label: t.priorities[value] }))}
        @tl-choose=${(e: CustomEvent<Priority>) => acts.ask({ priority: e.detail })}
      ></tl-choice>
      <tl-choice
        label=${t.maxTubes}
        .value=${String(maxTubes)}
        .options=${['2', '3', '4', '5'].map((value) => ({ value, label: value }))}
        @tl-choose=${(e: CustomEvent<string>) => acts.ask({ maxTubes: Number(e.detail) })}
      ></tl-choice>
      <tl-field
        kind="number"
        label=${t.amount}
        unit="g"
        min="0.1"
        max="10000"
        .value=${num(amount, 0)}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          if (e.detail.number !== undefined) acts.ask({ amount: e.detail.number });
        }}
      ></tl-field>
    </div>
    <tl-scale-fields class="scale" @tl-scale=${() => acts.ask({})}></tl-scale-fields>
  </section>`;
}
