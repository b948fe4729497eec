import { csvFormatRows } from 'd3-dsv';
import { saveFile } from '../api/save-file.ts';
import type { ChartTable } from './model.ts';

export const PAPER = '#ffffff';
export const INK = '#1c1c1c';

/** A file name from a heading: letters and digits of any script, joined by hyphens. */
export function fileStem(heading: string): string {
  return (
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 80) || 'chart'
  );
}

/** A stand-alone SVG document: dark ink on white whatever the theme, cursor left out. */
export function svgText(drawn: SVGSVGElement): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  copy.querySelectorAll('.cursor').forEach((mark) => mark.remove());
  copy.removeAttribute('aria-hidden');
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('color', INK);
  copy.setAttribute('font-family', 'system-ui, sans-serif');
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  for (const [k, v] of [
    ['width', '100%'],
    ['height', '100%'],
    ['fill', PAPER],
  ] as const)
    paper.setAttribute(k, v);
  copy.prepend(paper);
  return new XMLSerializer().serializeToString(copy).replace(/<!--[\s\S]*?-->/g, '');
}

export function csvText(table: ChartTable): string {
  const cells = table.rows.map((row) => row.map((v) => (typeof v === 'number' ? String(v) : harmless(v))));
  return `${csvFormatRows([[...table.head], ...cells])}\r\n`;
}

/** A text cell that a spreadsheet would run as a formula is made plain text with a leading apostrophe. */
function harmless(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

export function saveSvg(drawn: SVGSVGElement, heading: string): void {
  saveFile(`${fileStem(heading)}.svg`, svgText(drawn), 'image/svg+xml');
}

export function saveCsv(table: ChartTable, heading: string): void {
  saveFile(`${fileStem(heading)}.csv`, csvText(table), 'text/csv');
}

/** Twice the size on screen, so that it prints cleanly. */
export async function savePng(drawn: SVGSVGElement, heading: string): Promise<void> {
  const { width, height } = drawn.viewBox.baseVal;
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svgText(drawn)], { type: 'image/svg+xml' }));
  await image.decode();
  URL.revokeObjectURL(image.src);
  const canvas = document.createElement('canvas');
  canvas.width = 2 * width;
  canvas.height = 2 * height;
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (blob) saveFile(`${fileStem(heading)}.png`, blob);
}
