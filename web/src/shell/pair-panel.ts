import { css, html, nothing, svg } from 'lit';
import { type Answer, call } from '../api/call.ts';
import { EventsController } from '../api/events.ts';
import '../parts/notice.ts';
import { say } from '../parts/status-line.ts';
import { TlElement, define } from '../parts/tl-element.ts';
import { num, when } from '../text/numbers.ts';
import { pairingWords } from '../text/pairing.ts';

type Pairing = Answer<'getPairing'>;
const COMPUTER = new Set(['127.0.0.1', 'localhost', '[::1]']);

/** Letting a phone in, on the computer: the code to scan or type, and the phones that are in. */
export class TlPairPanel extends TlElement {
  static override properties = { pairing: { state: true }, refusal: { state: true }, asked: { state: true } };
  declare pairing: Pairing | undefined;
  declare refusal: string;
  /** A code was asked for here: when it is gone without a phone coming in, that is said. */
  declare asked: boolean;

  static override styles = [
    TlElement.styles,
    css`
      :host,
      section {
        display: grid;
        gap: var(--s2);
      }
      .code {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s3);
        align-items: center;
      }
      /* Cameras want black on white, whatever the theme; this is not a thing to press. */
      svg {
        inline-size: 13rem;
        block-size: 13rem;
        background: #fff;
      }
      dl {
        display: grid;
        gap: 4px;
        margin: 0;
        min-inline-size: 0;
      }
      dd {
        margin: 0 0 8px;
        overflow-wrap: anywhere;
      }
      .letters {
        font-size: var(--t-title);
        font-weight: 700;
        letter-spacing: 0.1em;
        line-height: 1.1;
      }
      ul {
        display: grid;
        gap: 8px;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 8px var(--s2);
        align-items: center;
        justify-content: space-between;
      }
    `,
  ];
  #wake: ReturnType<typeof setTimeout> | undefined;
  #last: Promise<void> = Promise.resolve();

  constructor() {
    super();
    this.pairing = undefined;
    this.refusal = '';
    this.asked = false;
    new EventsController(this, {
      changed: ({ what }) => {
        if (what === 'pairing') void this.#do(() => call('getPairing'));
      },
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (COMPUTER.has(location.hostname)) void this.#do(() => call('getPairing'));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#wake);
    // The slip is closed and nobody looks at the code any more.
    if (this.pairing?.code) void call('endPairingCode').catch(() => undefined);
  }

  /** One after the other, in the order asked: an older answer must not stand over a newer one. */
  #do(what: () => Promise<Pairing>): Promise<void> {
    return (this.#last = this.#last.then(() => this.#one(what)));
  }

  async #one(what: () => Promise<Pairing>): Promise<void> {
    this.refusal = '';
    try {
      this.pairing = await what();
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
    }
    clearTimeout(this.#wake);
    const ends = this.pairing?.code?.expiresAt;
    if (ends) {
      const left = Math.max(0, Date.parse(ends) - Date.now()) + 500;
      this.#wake = setTimeout(() => void this.#do(() => call('getPairing')), left);
    }
  }

  readonly #show = (): void => {
    this.asked = true;
    void this.#do(() => call('showPairingCode'));
  };

  override render() {
    const t = pairingWords();
    const { pairing } = this;
    const remote = !COMPUTER.has(location.hostname);
    return html`<h3>${t.heading}</h3>
      ${remote ? html`<p>${t.onPhone}</p>` : nothing}
      ${this.refusal ? html`<tl-notice kind="error" live>${this.refusal}</tl-notice>` : nothing}
      ${pairing && !pairing.on ? html`<p>${t.off} <code>npm start -- --pair</code></p>` : nothing}
      ${pairing?.on ? this.#on(pairing) : nothing}`;
  }

  #on({ code, phones }: Pairing) {
    const t = pairingWords();
    return html`<p>${t.lead}</p>
      <tl-notice kind="caution">${t.caution}</tl-notice>
      ${code ? this.#code(code) : nothing}
      ${!code && this.asked && phones.length === 0 ? html`<p role="status">${t.ended}</p>` : nothing}
      <div class="row">
        <button type="button" @click=${this.#show}>${code ? t.another : t.show}</button>
        ${
          code
            ? html`<button
                type="button"
                class="quiet"
                @click=${() => {
                  this.asked = false;
                  void this.#do(() => call('endPairingCode'));
                }}
              >
                ${t.putAway}
              </button>`
            : nothing
        }
      </div>
      <section>
        <h4>${t.phones}</h4>
        ${phones.length === 0 ? html`<p>${t.none}</p>` : nothing}
        <ul>
          ${phones.map(
            (phone) =>
              html`<li>
                <span>${t.paired(when(phone.pairedAt))}${phone.here ? `, ${t.here}` : ''}</span>
                <button type="button" @click=${() => this.#letGo(phone.id)}>${t.letGo}</button>
              </li>`,
          )}
        </ul>
      </section>`;
  }

  #code({ code, expiresAt, triesLeft, url, qr }: NonNullable<Pairing['code']>) {
    const t = pairingWords();
    const square = `0 0 ${qr.size} ${qr.size}`;
    return html`<p>${t.scan}</p>
      <div class="code">
        <svg viewBox=${square} role="img" aria-label=${t.qrName} shape-rendering="crispEdges">
          ${svg`<rect width=${qr.size} height=${qr.size} fill="#fff"></rect><path d=${qr.path} fill="#000"></path>`}
        </svg>
        <dl>
          <dt>${t.address}</dt>
          <dd>${url.split('#')[0]}</dd>
          <dt>${t.code}</dt>
          <dd class="letters">${code.slice(0, 4)} ${code.slice(4)}</dd>
        </dl>
      </div>
      <p class="small">${t.good(when(expiresAt), num(triesLeft, 0))}</p>`;
  }

  #letGo(phoneId: string): void {
    void this.#do(async () => {
      const now = await call('letGoOfPhone', { params: { phoneId } });
      say(pairingWords().gone);
      return now;
    });
  }
}
define('tl-pair-panel', TlPairPanel);
