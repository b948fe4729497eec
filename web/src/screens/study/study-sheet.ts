import { css, html, nothing } from 'lit';
import { createRef, ref } from 'lit/directives/ref.js';
import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import '../../parts/next-step.ts';
import '../../parts/page-frame.ts';
import '../../parts/sheet-notes.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { linkTo } from '../../shell/route.ts';
import { num } from '../../text/numbers.ts';
import { sheetWords } from '../../text/sheets.ts';
import { studyWords } from '../../text/study.ts';
import './family-table.ts';
import { canvasHeight, familyRows, rowColour } from './family-rows.ts';
import './paint-list.ts';
import './study-picture.ts';
import type { StudyTable } from './study-state.ts';

/** The study on paper: reference and study side by side, families with their recipes, and the paint to squeeze out. */
export class TlStudySheet extends TlElement {
  static override properties = {
    study: { attribute: false },
    profile: { attribute: false },
    resolution: { type: Number },
  };
  declare study: StudyTable;
  declare profile: PaletteProfile | undefined;
  declare resolution: number;
  readonly #canvas = createRef<HTMLCanvasElement>();

  static override styles = [
    TlElement.styles,
    css`
      .two {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--s2);
      }
      figure {
        margin: 0;
      }
      canvas {
        inline-size: 100%;
        block-size: auto;
        display: block;
      }
      figcaption {
        font-size: var(--t-small);
      }
      @media print {
        .two {
          max-inline-size: 150mm;
        }
      }
    `,
  ];

  constructor() {
    super();
    this.profile = undefined;
    this.resolution = 0.01;
  }

  override updated(): void {
    const canvas = this.#canvas.value;
    const { picture, crop } = this.study;
    if (!canvas || !picture || !crop) return;
    canvas.width = crop.width;
    canvas.height = crop.height;
    canvas
      .getContext('2d')!
      .drawImage(picture.bitmap, crop.x, crop.y, crop.width, crop.height, 0, 0, crop.width, crop.height);
  }

  override render() {
    const t = studyWords();
    const { study } = this;
    const rows = familyRows(study);
    const size = `${num(study.canvas.widthCentimetres, 1)} × ${num(canvasHeight(study), 1)} cm`;
    return html`<tl-page
      heading=${t.study}
      lead="${study.picture?.name ?? ''}, ${size}. ${sheetWords().studyIs}"
    >
      <tl-next slot="next" label=${t.print} @click=${() => window.print()}></tl-next>
      <a class="no-print" href=${linkTo('study')}>${t.back}</a>
      <div class="two">
        <figure>
          <canvas ${ref(this.#canvas)} role="img" aria-label=${t.reference}></canvas>
          <figcaption>${t.reference}</figcaption>
        </figure>
        ${
          study.families
            ? html`<figure>
                <tl-study-picture
                  .families=${study.families}
                  .colours=${rows.map((row) => rowColour(row, study.view))}
                  .dark=${rows.map((row) => (row.mix?.lab ?? row.family.lab).L < 55)}
                ></tl-study-picture>
                <figcaption>${t.study}: ${t.views[study.view]}</figcaption>
              </figure>`
            : nothing
        }
      </div>
      <tl-family-table
        .rows=${rows}
        .profile=${this.profile}
        .resolution=${this.resolution}
      ></tl-family-table>
      <tl-paint-list close .rows=${rows} .profile=${this.profile}></tl-paint-list>
      <tl-sheet-notes .profile=${this.profile}></tl-sheet-notes>
    </tl-page>`;
  }
}
define('tl-study-sheet', TlStudySheet);
