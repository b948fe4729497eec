import { css, html, nothing, svg } from 'lit';
import { gamutMark } from '../design/gamut-mark.ts';
import { onThisScreen, patchName, type Patch } from '../design/patch.ts';
import { rackWords } from '../text/rack.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * What is known of a tube, as one card: the masstone pulled above, the 1:4 tint below; the white is one pull. What was
 * not read is a bare card with the outline of the pull to come.
 *
 *   <tl-tube-card label="warm blue" .masstone=${patch} .tint=${patch}></tl-tube-card>
 */
export class TlTubeCard extends TlElement {
  static override properties = {
    label: { type: String },
    masstone: { attribute: false },
    tint: { attribute: false },
    white: { type: Boolean },
  };
  declare label: string;
  declare masstone: Patch | undefined;
  declare tint: Patch | undefined;
  /** The white has no tint: one pull fills its card. */
  declare white: boolean;

  static override styles = [
    TlElement.styles,
    css`
      svg {
        display: block;
        inline-size: 100%;
        aspect-ratio: 8 / 5;
      }
    `,
  ];

  constructor() {
    super();
    this.label = '';
    this.masstone = undefined;
    this.tint = undefined;
    this.white = false;
  }

  override render() {
    const t = rackWords();
    const said = [
      this.masstone ? `${t.masstone} ${patchName(this.masstone)}` : '',
      this.tint ? `${t.tint} ${patchName(this.tint)}` : '',
    ].filter(Boolean);
    return html`<svg
      viewBox="0 0 160 100"
      role="img"
      aria-label=${t.figure(this.label, said.join('; ') || t.bare)}
      preserveAspectRatio="none"
    >
      <rect width="80.2" height="100" fill="#0b0b0b"></rect>
      <rect x="80" width="80" height="100" fill="#ececec"></rect>
      ${
        this.white
          ? this.#pull(10, 80, this.masstone)
          : svg`${this.#pull(10, 46, this.masstone)} ${this.#pull(62, 28, this.tint)}`
      }
    </svg>`;
  }

  #pull(y: number, height: number, patch: Patch | undefined) {
    if (patch) {
      const { css: fill, shown } = onThisScreen(patch.lab);
      return svg`<rect x="10" y=${y} width="140" height=${height} fill=${fill}></rect>
        ${shown ? nothing : gamutMark(150, y + height, 14)}`;
    }
    return svg`<rect x="10.5" y=${y + 0.5} width="139" height=${height - 1} fill="none" stroke="#777777" stroke-dasharray="4 4"></rect>`;
  }
}
define('tl-tube-card', TlTubeCard);
