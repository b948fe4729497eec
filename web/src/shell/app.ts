import { html, nothing, type PropertyValues } from 'lit';
import { watchConnection, type Connection } from '../api/events.ts';
import '../parts/dialog.ts';
import '../parts/notice.ts';
import { say } from '../parts/status-line.ts';
import { TlElement, define } from '../parts/tl-element.ts';
import { BenchState } from '../state/bench-state.ts';
import { shellWords } from '../text/shell.ts';
import { appStyles } from './app-styles.ts';
import { here, mark } from './mark.ts';
import { type Route, linkTo, parseRoute } from './route.ts';
import { ACTS, THUMB, isScreen, loadAhead, loadScreen } from './screens.ts';
import { loadAgainOnce, loadedWell } from './load-again.ts';
import './screen-settings.ts';

interface Screen extends HTMLElement {
  route: Route;
}

/** The frame: the rail (a bar under the thumb on a phone), the head's line, the status line, and one screen. */
export class TlApp extends TlElement {
  static override properties = {
    route: { state: true },
    sheet: { state: true },
    connection: { state: true },
    failed: { state: true },
  };
  declare route: Route;
  declare sheet: boolean;
  declare connection: Connection;
  declare failed: string;

  static override styles = [TlElement.styles, appStyles];
  readonly #bench = new BenchState(this);
  #screen: Screen | undefined;
  #stop: (() => void) | undefined;

  constructor() {
    super();
    this.route = parseRoute(location.hash);
    this.sheet = false;
    this.connection = 'opening';
    this.failed = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', this.#moved);
    this.#stop = watchConnection((connection) => {
      if (connection === 'open' && this.connection === 'away') say(shellWords().back);
      this.connection = connection;
    });
    void this.#show().then(loadAhead);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('hashchange', this.#moved);
    this.#stop?.();
  }

  readonly #moved = (): void => {
    const before = this.route.screen;
    this.route = parseRoute(location.hash);
    this.sheet = false;
    if (this.route.screen !== before) say('');
    void this.#show().then(() => {
      if (this.route.screen === before) return;
      scrollTo(0, 0);
      // The reader's place moves with the screen; the first thing in it is its name.
      this.renderRoot.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
    });
  };

  async #show(): Promise<void> {
    const { route } = this;
    const tag = `tl-${route.screen}-screen`;
    this.failed = '';
    if (this.#screen?.localName === tag) {
      this.#screen.route = route;
      return;
    }
    if (!isScreen(route.screen)) {
      this.#screen = undefined;
      this.failed = shellWords().noScreen(route.screen);
      return;
    }
    try {
      await loadScreen(route.screen);
      if (this.route.screen !== route.screen) return;
      loadedWell(route.screen);
      this.#screen = document.createElement(tag) as Screen;
      this.#screen.route = this.route;
    } catch {
      if (loadAgainOnce(route.screen)) return;
      this.#screen = undefined;
      this.failed = `${shellWords().missing} ${shellWords().missingHint}`;
    }
    this.requestUpdate();
    await this.updateComplete;
  }

  override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    // Few open the slip, and fewer pair: its code comes with the first opening.
    if (changed.has('sheet') && this.sheet) void import('./pair-panel.ts').catch(() => undefined);
    const t = shellWords();
    const name = t.screens[this.route.screen as keyof typeof t.screens];
    document.title = name ? `${name} · ${t.name}` : t.name;
  }

  override render() {
    const t = shellWords();
    return html`
      <header class="skip no-print">
        <button type="button" @click=${this.#skip}>${t.skip}</button>
      </header>
      <nav class="rail no-print" aria-label=${t.places}>
        <a class="name" href=${linkTo('rack')}>${mark}<span>${t.name}</span></a>
        ${ACTS.map(
          ({ act, screens }) =>
            html`<div class="act">
              <h2>${t.acts[act]}</h2>
              ${screens.map((s) => this.#place(s))}
            </div>`,
        )}
        ${this.#headLine()}
        <button type="button" class="quiet" @click=${() => (this.sheet = true)}>${t.settings}</button>
      </nav>
      <main id="main" tabindex="-1">
        ${
          this.connection === 'away'
            ? html`<tl-notice class="away" kind="warning" live>${t.away}</tl-notice>`
            : nothing
        }
        ${
          this.failed
            ? html`<div class="failed">
                <h1>${t.name}</h1>
                <tl-notice kind="error" live>${this.failed}</tl-notice>
              </div>`
            : this.#screen
        }
        <div class="status no-print"><tl-status></tl-status></div>
      </main>
      <nav class="thumb no-print" aria-label=${t.places}>
        ${THUMB.map((s) => this.#place(s))}
        <button type="button" aria-expanded=${this.sheet} @click=${() => (this.sheet = true)}>
          ${t.all}${THUMB.some((s) => s === this.route.screen) ? nothing : here}
        </button>
      </nav>
      <tl-dialog heading=${t.allPlaces} ?open=${this.sheet} @tl-close=${() => (this.sheet = false)}>
        <div class="sheet">
          ${ACTS.map(
            ({ act, screens }) =>
              html`<div class="act">
                <h2>${t.acts[act]}</h2>
                ${screens.map((s) => this.#place(s))}
              </div>`,
          )}
        </div>
        ${this.#headLine()}
        <tl-screen-settings></tl-screen-settings>
        ${this.sheet ? html`<tl-pair-panel></tl-pair-panel>` : nothing}
      </tl-dialog>
    `;
  }

  #place(name: keyof ReturnType<typeof shellWords>['screens']) {
    const current = this.route.screen === name;
    return html`<a
      class="place"
      href=${linkTo(name)}
      aria-current=${current ? 'page' : nothing}
      @click=${() => (this.sheet = false)}
      >${shellWords().screens[name]}${current ? here : nothing}</a
    >`;
  }

  #headLine() {
    const t = shellWords();
    const instrument = this.#bench.value?.instrument;
    const name = instrument?.identity?.model;
    const on = instrument && instrument.state !== 'none';
    return html`<a class="head" href=${linkTo('bench')} @click=${() => (this.sheet = false)}>
      <b>${t.head}</b><span>${on ? `${name ?? ''} ${t.headStates[instrument.state]}`.trim() : t.noHead}</span>
    </a>`;
  }

  #skip(): void {
    this.renderRoot.querySelector<HTMLElement>('main')?.focus();
  }
}
define('tl-app', TlApp);
