import { css, html, svg } from 'lit';
import { createRef, ref } from 'lit/directives/ref.js';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import type { FamiliesAnswer } from '../../workers/study-jobs.ts';

/** The study: every family in one flat colour, with its number where it has room. */
export class TlStudyPicture extends TlElement {
  static override properties = {
    families: { attribute: false },
    colours: { attribute: false },
    dark: { attribute: false },
  };
  declare families: FamiliesAnswer;
  /** One CSS colour per family: `rgb(...)`. */
  declare colours: readonly string[];
  /** Whether each family is dark, so that its number is written in white. */
  declare dark: readonly boolean[];
  readonly #canvas = createRef<HTMLCanvasElement>();

  static override styles = [
    TlElement.styles,
    css`
      div {
        position: relative;
        line-height: 0;
      }
      canvas {
        inline-size: 100%;
        block-size: auto;
      }
      svg {
        position: absolute;
        inset: 0;
        inline-size: 100%;
        block-size: 100%;
        font-weight: 700;
      }
    `,
  ];

  override updated(): void {
    const canvas = this.#canvas.value;
    if (!canvas) return;
    const { width, height, of } = this.families;
    canvas.width = width;
    canvas.height = height;
    const pen = canvas.getContext('2d')!;
    const image = pen.createImageData(width, height);
    const rgb = this.colours.map((c) => (c.match(/[\d.]+%?/g) ?? []).slice(0, 3).map(channel));
    of.forEach((k, i) => {
      const [r = 0, g = 0, b = 0] = rgb[k] ?? [];
      image.data.set([r, g, b, 255], 4 * i);
    });
    pen.putImageData(image, 0, 0);
  }

  override render() {
    const { width, height, places, families } = this.families;
    const size = Math.max(11, Math.min(width, height) / 18);
    return html`<div role="img" aria-label=${studyWords().studySays(num(families.length, 0))}>
      <canvas ${ref(this.#canvas)}></canvas>
      <svg viewBox="0 0 ${width} ${height}" aria-hidden="true">
        ${places.map((p, i) =>
          p.room > 3
            ? svg`<text x=${p.x} y=${p.y} dy="0.35em" text-anchor="middle"
                font-size=${Math.min(size, Math.max(9, 1.5 * p.room))}
                fill=${this.dark[i] ? '#fff' : '#000'}>${i + 1}</text>`
            : '',
        )}
      </svg>
    </div>`;
  }
}

const channel = (text: string): number =>
  text.endsWith('%') ? Number.parseFloat(text) * 2.55 : Number(text);

define('tl-study-picture', TlStudyPicture);
