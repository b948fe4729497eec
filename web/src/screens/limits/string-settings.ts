import { css, html, nothing } from 'lit';
import { type Scale, type ValueStringOptions, canPour } from '../../../../src/mix/index.ts';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { limitsWords } from '../../text/limits.ts';
import { num } from '../../text/numbers.ts';

/** How a value string runs. It stays while other screens are open. */
export interface StringChoice {
  readonly way: 'neutral' | 'warm' | 'cool' | 'tube';
  readonly tube: string;
  readonly steps: number;
  readonly grams: number;
  /** How far a warm or a cool string leans. */
  readonly lean: number;
  /** Munsell values of the ends; undefined is as far as the tubes go. */
  readonly from: number | undefined;
  readonly to: number | undefined;
}

/** Leans of a warm or a cool string from neutral, CIELAB units: hardly seen, seen at once, plainly coloured. Our choice. */
const LEANS = [3, 6, 12] as const;

export const STRING_CHOICE: StringChoice = {
  way: 'neutral',
  tube: '',
  steps: 9,
  grams: 10,
  lean: LEANS[1],
  from: undefined,
  to: undefined,
};

export function stringOptions(
  choice: StringChoice,
  only: readonly string[],
  scale: Scale,
): Omit<ValueStringOptions, 'watch'> {
  const kind =
    choice.way === 'tube'
      ? { tube: choice.tube }
      : choice.way === 'neutral'
        ? ('neutral' as const)
        : { lean: choice.way === 'warm' ? choice.lean : -choice.lean };
  const { steps, grams, from, to } = choice;
  return {
    steps,
    grams,
    kind,
    only,
    ...(from === undefined ? {} : { from: { value: from } }),
    ...(to === undefined ? {} : { to: { value: to } }),
    ...(canPour(grams, scale) ? { scale } : {}),
  };
}

/** Sends `tl-string` with the whole choice at each change. */
export class TlStringSettings extends TlElement {
  static override properties = { choice: { attribute: false }, profile: { attribute: false } };
  declare choice: StringChoice;
  declare profile: PaletteProfile;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s3);
        align-items: end;
      }
      tl-field {
        inline-size: 11rem;
      }
    `,
  ];

  override render() {
    const t = limitsWords();
    const { choice } = this;
    const paints = this.profile.tubes.filter((tube) => tube.id !== this.profile.white);
    return html`<tl-choice
        label=${t.stringWay}
        .value=${choice.way}
        .options=${(['neutral', 'warm', 'cool', 'tube'] as const).map((value) => ({ value, label: t.ways[value] }))}
        @tl-choose=${(e: CustomEvent<StringChoice['way']>) => this.#send({ way: e.detail })}
      ></tl-choice>
      ${
        choice.way === 'tube'
          ? html`<tl-field
              label=${t.ofTube}
              .value=${choice.tube}
              .options=${paints.map((tube) => ({ value: tube.id, label: tube.label }))}
              @tl-change=${(e: CustomEvent<FieldChange>) => this.#send({ tube: e.detail.text })}
            ></tl-field>`
          : nothing
      }
      ${
        choice.way === 'warm' || choice.way === 'cool'
          ? html`<tl-choice
              label=${t.byHow}
              .value=${String(choice.lean)}
              .options=${LEANS.map((lean, i) => ({ value: String(lean), label: t.leans[i]! }))}
              @tl-choose=${(e: CustomEvent<string>) => this.#send({ lean: Number(e.detail) })}
            ></tl-choice>`
          : nothing
      }
      ${this.#end('from', t.from, t.fromHelp)} ${this.#end('to', t.upTo, t.upToHelp)}
      <tl-choice
        label=${t.steps}
        .value=${String(choice.steps)}
        .options=${['5', '7', '9', '11'].map((value) => ({ value, label: value }))}
        @tl-choose=${(e: CustomEvent<string>) => this.#send({ steps: Number(e.detail) })}
      ></tl-choice>
      <tl-field
        kind="number"
        label=${t.grams}
        unit="g"
        min="0.5"
        max="1000"
        .value=${num(choice.grams, 0)}
        @tl-change=${(e: CustomEvent<FieldChange>) => {
          if (e.detail.number !== undefined) this.#send({ grams: e.detail.number });
        }}
      ></tl-field>`;
  }

  #end(key: 'from' | 'to', label: string, placeholder: string) {
    const value = this.choice[key];
    return html`<tl-field
      kind="number"
      label=${label}
      placeholder=${placeholder}
      min="0"
      max="10"
      .value=${value === undefined ? '' : num(value, 1)}
      @tl-change=${(e: CustomEvent<FieldChange>) => {
        const blank = e.detail.text.trim() === '';
        if (blank || e.detail.number !== undefined)
          this.#send({ [key]: blank ? undefined : e.detail.number });
      }}
    ></tl-field>`;
  }

  #send(change: Partial<StringChoice>): void {
    this.dispatchEvent(new CustomEvent<StringChoice>('tl-string', { detail: { ...this.choice, ...change } }));
  }
}
define('tl-string-settings', TlStringSettings);
