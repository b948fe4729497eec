import { type SVGTemplateResult, svg } from 'lit';

/**
 * "Outside this screen": a folded corner, black within white within black, so that it shows on any paint.
 * @param x right edge, @param y lower edge of the film, @param size of the corner, all in the drawing's own units
 */
export function gamutMark(x: number, y: number, size: number): SVGTemplateResult {
  const corner = (s: number): string => `M${x} ${y}v${-s}l${-s} ${s}z`;
  return svg`<path d=${corner(size)} fill="#ececec"></path><path d=${corner(size * 0.8)} fill="#0b0b0b"></path>`;
}
