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

const SVG = 'http://www.w3.org/2000/svg';
/** Room for the name of the chart and what its marks mean, above it; and around it, px. */
const HEAD = 52;
const EDGE = 12;

/** What stands above a saved chart. */
export interface ChartName {
  readonly heading: string;
  /** What its marks are; may be empty. */
  readonly key: string;
}

/** A stand-alone SVG document under its own name: dark ink on white whatever the theme, cursor left out. */
export function svgText(drawn: SVGSVGElement, { heading, key }: ChartName): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  copy.querySelectorAll('.cursor').forEach((mark) => mark.remove());
  copy.removeAttribute('aria-hidden');
  copy.setAttribute('xmlns', SVG);
  copy.setAttribute('color', INK);
  copy.setAttribute('font-family', 'system-ui, sans-serif');
  const { width, height } = drawn.viewBox.baseVal;
  const size = savedSize(drawn);
  copy.setAttribute('width', String(size.width));
  copy.setAttribute('height', String(size.height));
  copy.setAttribute('viewBox', `${-EDGE} ${-HEAD} ${size.width} ${size.height}`);
  const paper = document.createElementNS(SVG, 'rect');
  for (const [k, v] of [
    ['x', String(-EDGE)],
    ['y', String(-HEAD)],
    ['width', String(width + 2 * EDGE)],
    ['height', String(height + HEAD + EDGE)],
    ['fill', PAPER],
  ] as const)
    paper.setAttribute(k, v);
  const title = document.createElementNS(SVG, 'title');
  title.textContent = heading;
  copy.prepend(title, paper, line(heading, -30, 16, 700), line(key, -10, 13, 400));
  return new XMLSerializer().serializeToString(copy).replace(/<!--[\s\S]*?-->/g, '');
}

function line(text: string, y: number, size: number, weight: number): SVGTextElement {
  const made = document.createElementNS(SVG, 'text');
  made.textContent = text;
  for (const [k, v] of Object.entries({ y, 'font-size': size, 'font-weight': weight, fill: INK }))
    made.setAttribute(k, String(v));
  return made;
}

function savedSize(drawn: SVGSVGElement): { width: number; height: number } {
  const { width, height } = drawn.viewBox.baseVal;
  return { width: width + 2 * EDGE, height: height + HEAD + EDGE };
}

export function csvText(table: ChartTable): string {
  const cells = table.rows.map((row) => row.map((v) => (typeof v === 'number' ? String(v) : harmless(v))));
  return `${csvFormatRows([[...table.head], ...cells])}\r\n`;
}

/** A text cell that a spreadsheet would run as a formula is made plain text with a leading apostrophe. */
function harmless(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

export function saveSvg(drawn: SVGSVGElement, name: ChartName): void {
  saveFile(`${fileStem(name.heading)}.svg`, svgText(drawn, name), 'image/svg+xml');
}

export function saveCsv(table: ChartTable, heading: string): void {
  saveFile(`${fileStem(heading)}.csv`, csvText(table), 'text/csv');
}

/** Twice the size on screen, so that it prints cleanly. */
export async function savePng(drawn: SVGSVGElement, name: ChartName): Promise<void> {
  const { width, height } = savedSize(drawn);
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svgText(drawn, name)], { type: 'image/svg+xml' }));
  await image.decode();
  URL.revokeObjectURL(image.src);
  const canvas = document.createElement('canvas');
  canvas.width = 2 * width;
  canvas.height = 2 * height;
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (blob) saveFile(`${fileStem(name.heading)}.png`, blob);
}
