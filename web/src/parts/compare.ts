import { css, html, nothing, svg } from 'lit';
import { ciede2000 } from '../../../src/colour/ciede2000.ts';
import { gamutMark } from '../design/gamut-mark.ts';
import { onThisScreen, patchName, type Patch } from '../design/patch.ts';
import { num } from '../text/numbers.ts';
import { partsWords } from '../text/parts.ts';
import { TlElement, define } from './tl-element.ts';

/**
 * Two or more patches on one card, edge to edge with no line and no gap: how a difference is judged.
 *
 *   <tl-compare .patches=${[measured, predicted]} .names=${['measured', 'predicted']}></tl-compare>
 */
export class TlCompare extends TlElement {
  static override properties = {
    patches: { attribute: false },
    names: { attribute: false },
    difference: { type: Number },
  };
  declare patches: readonly Patch[];
  declare names: readonly string[];
  /** CIEDE2000, where it was computed elsewhere (from the full reading); else it is taken from the first two Labs. */
  declare difference: number | undefined;

  static override styles = [
    TlElement.styles,
    css`
      svg {
        display: block;
        inline-size: 100%;
        block-size: clamp(7rem, 18vw, 14rem);
      }
      /* Printed colour is no paint: enough of it to know the pair again, and no more ink. */
      @media print {
        svg {
          block-size: 18mm;
        }
      }
      ul {
        display: flex;
        max-inline-size: none;
        padding: 0;
        margin: 8px 0 0;
        list-style: none;
      }
      li {
        flex: 1;
        min-inline-size: 0;
        line-height: 1.25;
        padding-inline-end: 8px;
      }
      b {
        display: block;
      }
      p {
        margin-block-start: 8px;
        font-weight: 700;
        font-size: var(--t-lead);
      }
    `,
  ];

  constructor() {
    super();
    this.patches = [];
    this.names = [];
    this.difference = undefined;
  }

  override render() {
    const t = partsWords();
    const n = Math.max(1, this.patches.length);
    const [first, second] = this.patches;
    const comparable = first && second && first.lab.white === second.lab.white;
    const dE = this.difference ?? (comparable ? ciede2000(first.lab, second.lab) : undefined);
    const wide = 144 / n;
    const says = (p: Patch): string =>
      onThisScreen(p.lab).shown ? patchName(p) : `${patchName(p)}, ${t.outsideShort}`;
    const label = this.patches.map((p, i) => `${this.names[i] ?? ''} ${says(p)}`).join('; ');
    return html`<svg viewBox="0 0 160 100" preserveAspectRatio="none" role="img" aria-label=${label}>
        <rect width="160" height="50" fill="#ececec"></rect>
        <rect y="50" width="160" height="50" fill="#0b0b0b"></rect>
        ${this.patches.map((p, i) => this.#strip(8 + i * wide, wide, p, i === n - 1))}
      </svg>
      <ul aria-hidden="true">
        ${this.patches.map((p, i) => html`<li><b>${this.names[i] ?? ''}</b>${says(p)}</li>`)}
      </ul>
      ${dE === undefined ? nothing : html`<p>${t.differenceLong(num(dE, 1))}</p>`}`;
  }

  #strip(x: number, width: number, patch: Patch, last: boolean) {
    // Under the next one, which is drawn over it: where two only touch, screens and printers let the card shine through.
    const { css: fill, shown } = onThisScreen(patch.lab);
    return svg`<rect x=${x} y="10" width=${last ? width : 1.5 * width} height="80" fill=${fill}></rect>
      ${shown ? nothing : gamutMark(x + width, 90, 10)}`;
  }
}
define('tl-compare', TlCompare);
