import { css, html, nothing } from 'lit';
import type { ProfileSummary } from '../../../../server/api/profiles.ts';
import { type Answer, call } from '../../api/call.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import '../../parts/notice.ts';
import '../../parts/table.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { RemoteController } from '../../state/remote.ts';
import { num, when } from '../../text/numbers.ts';
import { profileWords } from '../../text/profile.ts';
import { said } from '../../text/said.ts';

/** Two profiles of the history side by side, tube by tube. */
export class TlProfileCompare extends TlElement {
  static override properties = {
    profiles: { attribute: false },
    first: { state: true },
    second: { state: true },
  };
  /** Newest first. */
  declare profiles: readonly ProfileSummary[];
  declare first: string;
  declare second: string;
  readonly #answer = new RemoteController<Answer<'compareProfiles'>>(this);

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
      }
      .two {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 16rem), 1fr));
        gap: var(--s2);
        max-inline-size: 44rem;
      }
      button {
        justify-self: start;
      }
    `,
  ];

  constructor() {
    super();
    this.profiles = [];
    this.first = '';
    this.second = '';
  }

  override render() {
    const t = profileWords();
    if (this.profiles.length < 2) return html`<p>${t.needTwo}</p>`;
    const first = this.first || this.profiles[1]!.id;
    const second = this.second || this.profiles[0]!.id;
    const options = this.profiles.map((p) => ({ value: p.id, label: `${p.title}, ${when(p.createdAt)}` }));
    const found = this.#answer.value;
    return html`<p>${t.compareHow}</p>
      <div class="two">
        <tl-field
          label=${t.older}
          .value=${first}
          .options=${options}
          @tl-change=${(e: CustomEvent<FieldChange>) => (this.first = e.detail.text)}
        ></tl-field>
        <tl-field
          label=${t.newer}
          .value=${second}
          .options=${options}
          @tl-change=${(e: CustomEvent<FieldChange>) => (this.second = e.detail.text)}
        ></tl-field>
      </div>
      <button
        type="button"
        ?disabled=${this.#answer.pending}
        @click=${() =>
          void this.#answer.run((signal) => call('compareProfiles', { body: { first, second }, signal }))}
      >
        ${t.doCompare}
      </button>
      ${this.#answer.error ? html`<tl-notice kind="error" live>${this.#answer.error.message}</tl-notice>` : nothing}
      ${found ? this.#found(found) : nothing}`;
  }

  #found({ sentence, tubes }: Answer<'compareProfiles'>) {
    const t = profileWords();
    const figure = (v: number | null, unit = ''): string => (v === null ? '–' : `${num(v, 1)}${unit}`);
    return html`<p aria-live="polite"><b>${said(sentence)}</b></p>
      <tl-table
        caption=${t.compare}
        .columns=${[
          { heading: t.tube },
          { heading: t.masstone, unit: 'CIEDE2000', figures: true },
          { heading: t.tint, unit: 'CIEDE2000', figures: true },
          { heading: t.strength, unit: '%', figures: true },
          { heading: t.says },
        ]}
        .rows=${tubes.map((tube) => [
          tube.label,
          figure(tube.masstoneDeltaE00),
          figure(tube.tintDeltaE00),
          figure(tube.strengthPercent),
          tube.status === 'in both' ? said(tube.sentence) : t.status[tube.status],
        ])}
      ></tl-table>`;
  }
}
define('tl-profile-compare', TlProfileCompare);
