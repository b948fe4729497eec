import { html, nothing } from 'lit';
import type { NewTile, WhiteTile } from '../../../../server/api/tiles.ts';
import { call } from '../../api/call.ts';
import '../../parts/notice.ts';
import { say } from '../../parts/status-line.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { benchSays } from '../../text/findings.ts';
import { headWords } from '../../text/head.ts';
import './enter-tile.ts';
import { foldStyles } from './fold-styles.ts';

/** The white tiles a head can be set on, and a way to enter one. */
export class TlWhiteTiles extends TlElement {
  static override properties = {
    tiles: { state: true },
    refusal: { state: true },
    idle: { type: Boolean },
    head: { type: String },
  };
  declare tiles: readonly WhiteTile[];
  declare refusal: string;
  /** The head is free. */
  declare idle: boolean;
  /** Its identity: another head has other tiles in use. */
  declare head: string;

  static override styles = [TlElement.styles, foldStyles];

  constructor() {
    super();
    this.tiles = [];
    this.refusal = '';
    this.idle = true;
    this.head = '';
  }

  override willUpdate(changed: Map<string, unknown>): void {
    if (changed.has('head')) void this.#try(() => call('listTiles'), '');
  }

  override render() {
    const t = headWords();
    const chosen = this.tiles.find((tile) => tile.inUse);
    return html`<details>
      <summary>${t.tiles}</summary>
      <div class="inside">
        <p>${t.tilesLead}</p>
        <ul>
          <li>
            <div>
              <h3>${t.assumed}${chosen ? nothing : html`: ${t.inUse}`}</h3>
              <p>${t.assumedSays}</p>
            </div>
            ${
              chosen
                ? html`<button
                    type="button"
                    aria-label="${t.use}: ${t.assumed}"
                    @click=${() => void this.#use(undefined)}
                  >
                    ${t.use}
                  </button>`
                : nothing
            }
          </li>
          ${this.tiles.map((tile) => this.#row(tile))}
        </ul>
        ${this.refusal ? html`<tl-notice kind="error" live>${benchSays(this.refusal)}</tl-notice>` : nothing}
        <tl-enter-tile
          ?idle=${this.idle}
          @tl-new-tile=${(e: CustomEvent<NewTile>) => void this.#add(e.detail)}
        ></tl-enter-tile>
      </div>
    </details>`;
  }

  #row(tile: WhiteTile) {
    const t = headWords();
    return html`<li>
      <div>
        <h3>${tile.name}${tile.inUse ? html`: ${t.inUse}` : nothing}</h3>
        <p>${benchSays(tile.sentence)}</p>
      </div>
      <div class="buttons">
        ${
          tile.usable && !tile.inUse
            ? html`<button
                type="button"
                aria-label="${t.use}: ${tile.name}"
                @click=${() => void this.#use(tile)}
              >
                ${t.use}
              </button>`
            : nothing
        }
        <button
          type="button"
          class="quiet"
          aria-label="${t.putAway}: ${tile.name}"
          @click=${() => void this.#try(() => call('deleteTile', { params: { tileId: tile.id } }), t.tileGone)}
        >
          ${t.putAway}
        </button>
      </div>
    </li>`;
  }

  #use(tile: WhiteTile | undefined): Promise<boolean> {
    const t = headWords();
    return this.#try(
      () => (tile ? call('useTile', { params: { tileId: tile.id } }) : call('useNoTile')),
      t.tileUsed(tile?.name ?? t.assumed),
    );
  }

  async #add(body: NewTile): Promise<void> {
    const added = await this.#try(() => call('addTile', { body }), headWords().tileUsed(body.name));
    if (added) this.renderRoot.querySelector('tl-enter-tile')?.clear();
  }

  async #try(work: () => Promise<readonly WhiteTile[]>, said: string): Promise<boolean> {
    this.refusal = '';
    try {
      this.tiles = await work();
      if (said) say(said);
      return true;
    } catch (cause) {
      this.refusal = cause instanceof Error ? cause.message : String(cause);
      return false;
    }
  }
}
define('tl-white-tiles', TlWhiteTiles);
