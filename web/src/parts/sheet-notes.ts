import { css, html } from 'lit';
import { DEFAULT_WHITE, type WhiteName } from '../../../src/colour/illuminant.ts';
import type { PaletteProfile } from '../../../src/profile/schema.ts';
import { when } from '../text/numbers.ts';
import { sheetWords } from '../text/sheets.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * What lets a sheet stand alone once it has left the bench: whose numbers they are, under which light, in which units,
 * and that ink is not paint. On paper only.
 *
 *   <tl-sheet-notes .profile=${profile} white="D65/10deg"></tl-sheet-notes>
 */
export class TlSheetNotes extends TlElement {
  static override properties = { profile: { attribute: false }, white: { type: String } };
  /** Absent where no palette stands behind the sheet. */
  declare profile: PaletteProfile | undefined;
  /** The white its colours are stated and drawn for. */
  declare white: WhiteName;

  static override styles = [
    TlElement.styles,
    css`
      :host {
        display: none;
      }
      @media print {
        :host {
          display: block;
          font-size: var(--t-small);
          line-height: 1.3;
          break-inside: avoid;
        }
        p {
          max-inline-size: none;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.profile = undefined;
    this.white = DEFAULT_WHITE;
  }

  override render() {
    const t = sheetWords();
    const { profile } = this;
    const from = profile
      ? t.palette(profile.title?.trim() || t.untitled, when(profile.created, false), profile.geometry)
      : '';
    return html`<p>${from} ${t.light(this.white.replace('deg', '°'))}</p>
      <p><b>${t.notPaint}</b></p>`;
  }
}
define('tl-sheet-notes', TlSheetNotes);
