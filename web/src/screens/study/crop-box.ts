import { css, html, svg } from 'lit';
import { createRef, ref } from 'lit/directives/ref.js';
import type { Crop } from '../../../../src/study/index.ts';
import { TlElement, define } from '../../parts/tl-element.ts';
import { num } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { fitted, moved, resized } from './crop-moves.ts';
import type { OpenedPicture } from './open-picture.ts';

type Grip = 'move' | 'corner' | undefined;

/** A picture with a crop: drag inside to move it, drag its corner to size it, or use the arrow keys. Sends `tl-crop`. */
export class TlCropBox extends TlElement {
  static override properties = { picture: { attribute: false }, crop: { attribute: false } };
  declare picture: OpenedPicture;
  declare crop: Crop;
  readonly #canvas = createRef<HTMLCanvasElement>();
  #grip: Grip;
  #last: { x: number; y: number } | undefined;
  #drawn: unknown;

  static override styles = [
    TlElement.styles,
    css`
      .box {
        position: relative;
        touch-action: none;
        cursor: move;
        line-height: 0;
      }
      canvas {
        inline-size: 100%;
        block-size: auto;
        max-block-size: 70vh;
        object-fit: contain;
        object-position: left top;
      }
      svg {
        position: absolute;
        inset-block-start: 0;
        inset-inline-start: 0;
        inline-size: 100%;
        block-size: 100%;
      }
    `,
  ];

  override updated(): void {
    const canvas = this.#canvas.value;
    if (!canvas || this.#drawn === this.picture) return;
    this.#drawn = this.picture;
    canvas.width = this.picture.width;
    canvas.height = this.picture.height;
    canvas.getContext('2d')!.drawImage(this.picture.bitmap, 0, 0);
  }

  override render() {
    const t = studyWords();
    const { picture, crop } = this;
    const px = (v: number): string => num(v, 0);
    const grip = Math.max(picture.width, picture.height) / 28;
    const outside = `M0 0H${picture.width}V${picture.height}H0ZM${crop.x} ${crop.y}v${crop.height}h${crop.width}v${-crop.height}Z`;
    return html`<div
      class="box"
      tabindex="0"
      role="application"
      aria-roledescription=${t.crop}
      aria-label="${t.cropBox}: ${t.cropSays(px(crop.width), px(crop.height), px(crop.x), px(crop.y))}. ${t.cropKeys}"
      @keydown=${this.#key}
      @pointerdown=${this.#down}
      @pointermove=${this.#drag}
      @pointerup=${() => (this.#grip = undefined)}
    >
      <canvas ${ref(this.#canvas)} aria-hidden="true"></canvas>
      <svg
        viewBox="0 0 ${picture.width} ${picture.height}"
        preserveAspectRatio="xMinYMin meet"
        aria-hidden="true"
      >
        ${svg`<path d=${outside} fill="#000" fill-opacity="0.6"></path>
          <rect x=${crop.x} y=${crop.y} width=${crop.width} height=${crop.height} fill="none" stroke="#000"
            stroke-width=${grip / 7}></rect>
          <rect x=${crop.x} y=${crop.y} width=${crop.width} height=${crop.height} fill="none" stroke="#fff"
            stroke-width=${grip / 16}></rect>
          <rect x=${crop.x + crop.width - grip} y=${crop.y + crop.height - grip} width=${grip} height=${grip}
            fill="#fff" stroke="#000" stroke-width=${grip / 12}></rect>`}
      </svg>
    </div>`;
  }

  #set(crop: Crop): void {
    const detail = fitted(crop, this.picture);
    this.dispatchEvent(new CustomEvent<Crop>('tl-crop', { detail, bubbles: true }));
  }

  readonly #key = (event: KeyboardEvent): void => {
    const step = Math.max(1, Math.round(Math.max(this.picture.width, this.picture.height) / 100));
    const by: Record<string, readonly [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const d = by[event.key];
    if (!d) return;
    event.preventDefault();
    this.#set(event.shiftKey ? resized(this.crop, ...d) : moved(this.crop, this.picture, ...d));
  };

  #at(event: PointerEvent): { x: number; y: number } {
    const box = this.#canvas.value!.getBoundingClientRect();
    const k = Math.max(this.picture.width / box.width, this.picture.height / box.height);
    return { x: (event.clientX - box.left) * k, y: (event.clientY - box.top) * k };
  }

  readonly #down = (event: PointerEvent): void => {
    const at = this.#at(event);
    const { crop, picture } = this;
    const near = Math.max(picture.width, picture.height) / 14;
    const corner = Math.hypot(at.x - crop.x - crop.width, at.y - crop.y - crop.height) < near;
    this.#grip = corner ? 'corner' : 'move';
    this.#last = at;
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
  };

  readonly #drag = (event: PointerEvent): void => {
    if (!this.#grip || !this.#last) return;
    const at = this.#at(event);
    const [dx, dy] = [Math.round(at.x - this.#last.x), Math.round(at.y - this.#last.y)];
    if (dx === 0 && dy === 0) return;
    this.#last = { x: this.#last.x + dx, y: this.#last.y + dy };
    this.#set(this.#grip === 'corner' ? resized(this.crop, dx, dy) : moved(this.crop, this.picture, dx, dy));
  };
}
define('tl-crop-box', TlCropBox);
