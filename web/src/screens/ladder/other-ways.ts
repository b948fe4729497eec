import { css, html, nothing } from 'lit';
import type { TypedReading } from '../../../../server/api/readings.ts';
import '../../parts/choice.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { ladderWords } from '../../text/ladder.ts';
import type { FileQuestion, FileReading } from './file-entry.ts';
import './file-entry.ts';
import type { How } from './ladder-hand.ts';
import type { TlTypedEntry } from './typed-entry.ts';
import './typed-entry.ts';

export type Way = 'head' | 'typed' | 'file';

/** Where the numbers come from: the head, the keyboard or a file, as equals. Sends `tl-way` and `tl-take`. */
export class TlOtherWays extends TlElement {
  static override properties = {
    name: { type: String },
    way: { type: String },
    busy: { type: Boolean },
    question: { attribute: false },
  };
  /** What is read next. */
  declare name: string;
  declare way: Way;
  declare busy: boolean;
  declare question: FileQuestion | undefined;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: grid;
        gap: var(--s3);
        border-block-start: var(--edge);
        padding-block-start: var(--s3);
      }
    `,
  ];

  constructor() {
    super();
    this.name = '';
    this.way = 'head';
    this.busy = false;
    this.question = undefined;
  }

  override render() {
    const t = ladderWords();
    return html`<tl-choice
        label=${t.how}
        .options=${(['head', 'typed', 'file'] as const).map((value) => ({ value, label: t.ways[value] }))}
        .value=${this.way}
        @tl-choose=${(e: CustomEvent<Way>) => this.#send('tl-way', e.detail)}
      ></tl-choice>
      ${
        this.way === 'typed'
          ? html`<tl-typed-entry
              label=${t.takeTyped(this.name)}
              ?busy=${this.busy}
              @tl-typed-reading=${(e: CustomEvent<TypedReading>) =>
                this.#send('tl-take', { source: 'typed', reading: e.detail })}
            ></tl-typed-entry>`
          : nothing
      }
      ${
        this.way === 'file'
          ? html`<tl-file-entry
              label=${t.takeFile(this.name)}
              .question=${this.question}
              ?busy=${this.busy}
              @tl-file-reading=${(e: CustomEvent<FileReading>) => this.#send('tl-take', e.detail)}
            ></tl-file-entry>`
          : nothing
      }`;
  }

  /** The reading was stored: the numbers make room for the next. */
  clear(): void {
    this.renderRoot.querySelector<TlTypedEntry>('tl-typed-entry')?.clear();
  }

  #send(type: 'tl-way' | 'tl-take', detail: Way | How): void {
    this.dispatchEvent(new CustomEvent<Way | How>(type, { detail, bubbles: true, composed: true }));
  }
}
define('tl-other-ways', TlOtherWays);
