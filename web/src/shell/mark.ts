import { svg } from 'lit';
import { html } from 'lit';

/** The mark: four pulls over a black and white card, masstone to palest tint. */
export const mark = html`<svg class="mark" viewBox="0 0 32 32" aria-hidden="true">
  <rect width="16.1" height="32" fill="#0b0b0b"></rect>
  <rect x="16" width="16" height="32" fill="#ececec"></rect>
  ${[0x26, 0x62, 0x9c, 0xcc].map(
    (g, i) => svg`<rect x="4" y=${3 + 7 * i} width="24" height="5" fill=${`rgb(${g} ${g} ${g})`}></rect>`,
  )}
</svg>`;

/** Where you are: a small card with a film across it. */
export const here = html`<svg class="here" viewBox="0 0 20 14" aria-hidden="true">
  <rect width="10.1" height="14" fill="#0b0b0b"></rect>
  <rect x="10" width="10" height="14" fill="#ececec"></rect>
  <rect x="2" y="4" width="16" height="6" fill="#777777"></rect>
</svg>`;
