import { css, html } from 'lit';
import './drawdown.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * Nothing here yet, and what to do about it: a bare card, one line, and whatever stands in the slot.
 *
 *   <tl-empty heading="No tube has been measured"><p>...</p></tl-empty>
 */
export class TlEmpty extends TlElement {
  static override properties = { heading: { type: String } };
  declare heading: string;

  static override styles = [
    TlElement.styles,
    css`
      div {
        display: grid;
        grid-template-columns: minmax(6rem, 15rem) minmax(0, 1fr);
        gap: var(--s3);
        align-items: center;
      }
      @media (max-width: 34rem) {
        div {
          grid-template-columns: 1fr;
        }
        tl-drawdown {
          inline-size: 9rem;
        }
      }
      section {
        display: grid;
        gap: var(--s2);
      }
    `,
  ];

  constructor() {
    super();
    this.heading = '';
  }

  override render() {
    return html`<div>
      <tl-drawdown plain aria-hidden="true"></tl-drawdown>
      <section>
        <h2>${this.heading}</h2>
        <slot></slot>
      </section>
    </div>`;
  }
}
define('tl-empty', TlEmpty);
