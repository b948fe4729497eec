import { css, html, nothing } from 'lit';
import { type Answer, type Body, call } from '../../api/call.ts';
import '../../parts/choice.ts';
import '../../parts/field.ts';
import type { FieldChange } from '../../parts/field.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { RemoteController } from '../../state/remote.ts';
import { say } from '../../parts/status-line.ts';
import { canOpenPorts, openBrowserPort } from '../../state/browser-port.ts';
import { benchWords } from '../../text/bench.ts';
import { headWords } from '../../text/head.ts';
import { said } from '../../text/said.ts';

export type Connection = Body<'connectInstrument'>;
const GEOMETRIES = ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const;

/** Three equal ways to readings: a head on a cable, the practice instrument, numbers from elsewhere. */
export class TlConnect extends TlElement {
  static override properties = { kind: { state: true }, path: { state: true }, geometry: { state: true } };
  declare kind: 'spectral' | 'bands';
  declare path: string;
  declare geometry: string;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr));
        gap: var(--s4);
      }
      section {
        border-block-start: var(--edge);
        padding-block-start: var(--s2);
        display: grid;
        gap: var(--s2);
        align-content: start;
      }
      a {
        justify-self: start;
        display: grid;
        align-content: center;
        min-block-size: var(--target);
        padding-inline: 16px;
        border: var(--edge);
        font-weight: 650;
        text-decoration: none;
      }
      button {
        justify-self: start;
      }
    `,
  ];
  readonly #ports = new RemoteController<Answer<'listPorts'>>(this);

  constructor() {
    super();
    this.kind = 'spectral';
    this.path = '';
    this.geometry = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#look();
  }

  readonly #look = (): void => {
    void this.#ports.run((signal) => call('listPorts', { signal }));
  };

  /** What the screen's next step would connect: the only or chosen port, else the practice instrument. */
  get wanted(): Connection {
    const ports = this.#ports.value?.ports ?? [];
    const path = this.path || (ports.length === 1 ? ports[0]!.path : '');
    return path ? this.serial(path) : { transport: 'practice', kind: this.kind };
  }

  serial(path: string): Connection {
    const geometry = GEOMETRIES.find((g) => g === this.geometry);
    return { transport: 'serial', path, ...(geometry ? { geometry } : {}) };
  }

  /** The ports are known, or cannot be: until then no next step is offered that would change under a finger. */
  get #looked(): boolean {
    return this.#ports.value !== undefined || this.#ports.error !== undefined;
  }

  override updated(): void {
    if (!this.#looked) return;
    this.dispatchEvent(new CustomEvent<Connection>('tl-wanted', { detail: this.wanted }));
  }

  override render() {
    const t = benchWords();
    const own = headWords();
    const ports = this.#ports.value;
    if (!this.#looked) return nothing;
    return html`
      <section>
        <h2>${t.ports}</h2>
        ${
          ports === undefined || ports.ports.length === 0
            ? html`<p>${said(ports?.sentence ?? '') || t.noPorts}</p>`
            : html`<tl-choice
                  label=${t.ports}
                  quiet
                  .options=${ports.ports.map((p) => ({ value: p.path, label: `${p.path} · ${p.label}` }))}
                  .value=${this.wanted.transport === 'serial' ? this.wanted.path : ''}
                  @tl-choose=${(e: CustomEvent<string>) => (this.path = e.detail)}
                ></tl-choice>
                <tl-field
                  label=${t.geometry}
                  .value=${this.geometry}
                  .options=${[
                    { value: '', label: t.geometrySays },
                    ...GEOMETRIES.map((g) => ({ value: g, label: g })),
                  ]}
                  @tl-change=${(e: CustomEvent<FieldChange>) => (this.geometry = e.detail.text)}
                ></tl-field>`
        }
        <button type="button" @click=${this.#look}>${t.lookAgain}</button>
        <h3>${own.own}</h3>
        ${
          canOpenPorts()
            ? html`<p>${own.ownLead}</p>
                <button type="button" @click=${() => void this.#ownPort()}>${own.ownOpen}</button>`
            : html`<p>${own.ownCannot}</p>`
        }
      </section>
      <section>
        <h2>${t.practice}</h2>
        <p>${t.practiceLead}</p>
        <tl-choice
          label=${t.practiceKind}
          .options=${[
            { value: 'spectral', label: t.kinds.spectral },
            { value: 'bands', label: t.kinds.bands },
          ]}
          .value=${this.kind}
          @tl-choose=${(e: CustomEvent<'spectral' | 'bands'>) => (this.kind = e.detail)}
        ></tl-choice>
        ${
          this.wanted.transport === 'practice'
            ? nothing
            : html`<button type="button" @click=${this.#practise}>${t.startPractice}</button>`
        }
      </section>
      <section>
        <h2>${t.typed}</h2>
        <p>${t.typedLead}</p>
        <a href=${linkTo('ladder')}>${t.typedGo}</a>
      </section>
    `;
  }

  /** The browser asks which port; nothing is connected when the person closes that question. */
  async #ownPort(): Promise<void> {
    try {
      const connection = await openBrowserPort();
      if (connection === undefined) return say(headWords().ownNone);
      const detail: Connection = { transport: 'browser', connection };
      this.dispatchEvent(
        new CustomEvent<Connection>('tl-connect', { detail, bubbles: true, composed: true }),
      );
    } catch (cause) {
      const detail = cause instanceof Error ? cause.message : String(cause);
      this.dispatchEvent(new CustomEvent<string>('tl-refused', { detail, bubbles: true, composed: true }));
    }
  }

  readonly #practise = (): void => {
    const detail: Connection = { transport: 'practice', kind: this.kind };
    this.dispatchEvent(new CustomEvent<Connection>('tl-connect', { detail, bubbles: true, composed: true }));
  };
}
define('tl-connect', TlConnect);
