import { css, html, nothing } from 'lit';
import type { Instrument } from '../../../../server/api/instrument.ts';
import { call } from '../../api/call.ts';
import '../../parts/field.ts';
import type { TlField } from '../../parts/field.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { setInstrument } from '../../state/bench-state.ts';
import { benchWords } from '../../text/bench.ts';
import { num } from '../../text/numbers.ts';

/** What a head says of itself, its gain and time, and how to let it go. Folded away: nobody needs it with wet hands. */
export class TlAboutHead extends TlElement {
  static override properties = { instrument: { attribute: false }, gain: { state: true } };
  declare instrument: Instrument | undefined;
  declare gain: string;

  static override styles = [
    TlElement.styles,
    css`
      details {
        border-block-start: var(--edge);
      }
      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: 4px 16px;
        overflow-wrap: anywhere;
      }
      dt {
        font-weight: 650;
      }
      dd {
        margin: 0;
      }
      .row {
        align-items: end;
        margin-block-start: var(--s2);
      }
      tl-field {
        inline-size: 9rem;
      }
    `,
  ];

  constructor() {
    super();
    this.instrument = undefined;
    this.gain = '';
  }

  override render() {
    const { instrument } = this;
    if (!instrument) return nothing;
    const t = benchWords();
    const { identity, allowed, settings } = instrument;
    const lines: readonly (readonly [string, string])[] = [
      [t.identity, identity ? `${identity.maker} ${identity.model}` : ''],
      [t.port, instrument.port ?? ''],
      [t.serial, identity?.serial ?? ''],
      [t.firmware, identity?.firmware ?? ''],
      [t.geometryName, instrument.geometry ?? ''],
      [t.channels, instrument.channels.map((c) => c.name).join(' ')],
      [t.temperature, instrument.temperature === null ? '' : `${num(instrument.temperature, 1)} °C`],
      [t.checksum, instrument.checksum ? t.yes : t.no],
    ];
    return html`<details>
      <summary>${t.about}</summary>
      <dl>
        ${lines
          .filter(([, v]) => v)
          .map(
            ([k, v]) =>
              html`<dt>${k}</dt>
                <dd>${v}</dd>`,
          )}
      </dl>
      ${
        allowed && settings
          ? html`<div class="row">
                <tl-field
                  class="gain"
                  label=${t.gain}
                  .value=${String(settings.gain)}
                  .options=${allowed.gains.map((g) => ({ value: String(g), label: `${num(g, g < 1 ? 1 : 0)}×` }))}
                ></tl-field>
                <tl-field
                  class="time"
                  kind="number"
                  label=${t.time}
                  unit="ms"
                  .value=${num(settings.apertureMs, 1)}
                  .min=${allowed.apertureMs.min}
                  .max=${allowed.apertureMs.max}
                ></tl-field>
                <button type="button" @click=${this.#change}>${t.set}</button>
              </div>
              <p class="small">${t.settingsNote}</p>`
          : nothing
      }
      <div class="row"><button type="button" @click=${this.#letGo}>${t.disconnect}</button></div>
    </details>`;
  }

  readonly #change = async (): Promise<void> => {
    const gain = this.renderRoot.querySelector<TlField>('.gain');
    const time = this.renderRoot.querySelector<TlField>('.time');
    if (!gain || !time?.check() || time.number === undefined) return;
    const body = { gain: Number(gain.value), apertureMs: time.number };
    await this.#try(async () => {
      setInstrument(await call('setInstrument', { body }));
      say(benchWords().settingsNote);
    });
  };

  readonly #letGo = (): Promise<void> =>
    this.#try(async () => {
      setInstrument(await call('disconnectInstrument'));
      say(benchWords().letGo);
    });

  async #try(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (cause) {
      const detail = cause instanceof Error ? cause.message : String(cause);
      this.dispatchEvent(new CustomEvent<string>('tl-refused', { detail }));
    }
  }
}
define('tl-about-head', TlAboutHead);
