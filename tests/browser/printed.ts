/**
 * A sheet as it comes out of a printer: Chromium makes the PDF with a browser's own defaults (background graphics off,
 * so that what is needed to read the sheet must be drawn), and pdf.js, another hand than the one that wrote it, turns
 * each page back into a picture and into words.
 *
 *   const sheets = await printed(page, 'print-recipe-card');     // on A4 and on Letter
 *   expect(faultsOf(sheets, { pages: 1, words: ['Recipe card'] })).toEqual([]);
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import type { Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PICTURES } from './bench-under-test.ts';

/** Width and height in points (1/72 inch): ISO 216 A4 is 210 x 297 mm, ANSI/ASME Y14.1 size A is 8.5 x 11 in. */
const PAPERS = { A4: [595, 842], Letter: [612, 792] } as const;
type Paper = keyof typeof PAPERS;

/** Pixels per point of the pictures: 1.5 is 108 to the inch, enough to see a hairline. */
const SCALE = 1.5;
/** Of 255: paper and the faintest tint a printer lays down count as bare. */
const BARE = 250;

export interface PrintedPage {
  readonly widthPt: number;
  readonly heightPt: number;
  /** All words on the page, in the order they were drawn, with single spaces. */
  readonly words: string;
  /** Share of the page that is not bare paper, 0 to 1. */
  readonly covered: number;
  /** Mean darkness over the page, 0 to 1: what it takes from the cartridge. */
  readonly ink: number;
  /** Distance in points from each edge to the first thing drawn: left, top, right, bottom. */
  readonly bare: readonly [number, number, number, number];
}

export interface PrintedSheet {
  readonly paper: Paper;
  readonly paperPt: readonly [number, number];
  readonly pages: readonly PrintedPage[];
}

function measure(
  pixels: Uint8ClampedArray,
  width: number,
  height: number,
): Omit<PrintedPage, 'widthPt' | 'heightPt' | 'words'> {
  let covered = 0;
  let ink = 0;
  let [left, top, right, bottom] = [width, height, width, height];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const grey = (pixels[at]! + pixels[at + 1]! + pixels[at + 2]!) / 3;
      ink += 1 - grey / 255;
      if (grey >= BARE) continue;
      covered++;
      left = Math.min(left, x);
      right = Math.min(right, width - 1 - x);
      top = Math.min(top, y);
      bottom = Math.min(bottom, height - 1 - y);
    }
  const area = width * height;
  return {
    covered: covered / area,
    ink: ink / area,
    bare: [left / SCALE, top / SCALE, right / SCALE, bottom / SCALE],
  };
}

async function read(pdf: Buffer, name: string): Promise<PrintedPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages: PrintedPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const viewport = page.getViewport({ scale: SCALE });
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
    const canvas = createCanvas(width, height);
    const context = canvas.getContext('2d');
    await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
    writeFileSync(join(PICTURES, `${name}-${n}.png`), await canvas.encode('png'));
    const content = await page.getTextContent();
    const words = content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({
      widthPt: viewport.width / SCALE,
      heightPt: viewport.height / SCALE,
      words: words.replaceAll(/\s+/g, ' ').trim(),
      ...measure(context.getImageData(0, 0, width, height).data, width, height),
    });
  }
  await document.destroy();
  return pages;
}

/** Prints what the page shows on A4 and on Letter; the PDFs and the pictures of their pages are kept as artefacts. */
export async function printed(page: Page, name: string): Promise<PrintedSheet[]> {
  mkdirSync(PICTURES, { recursive: true });
  const sheets: PrintedSheet[] = [];
  for (const paper of Object.keys(PAPERS) as Paper[]) {
    const kept = `${name}-${paper.toLowerCase()}`;
    const pdf = await page.pdf({ path: join(PICTURES, `${kept}.pdf`), format: paper });
    sheets.push({ paper, paperPt: PAPERS[paper], pages: await read(pdf, kept) });
  }
  return sheets;
}

/** More than this share of the paper in ink is not sparing: text alone takes 5 %, patches of a ladder 10 % more. */
const MOST_INK = 0.25;
/** Common printers leave 4.2 mm (12 pt) at each edge bare (common practice, no source). */
const LEAST_MARGIN_PT = 12;
/** Chromium rounds paper to whole CSS pixels. */
const PAPER_TOLERANCE_PT = 1;
/** A page that carries no more than this was started by a line too many. */
const LEAST_COVERED = 0.01;

/**
 * What a person would send back, in words; empty when every page can be used.
 * @param pages how many pages the sheet may take
 * @param words what must be readable on it
 */
export function faultsOf(
  sheets: readonly PrintedSheet[],
  asked: { readonly pages: number; readonly words: readonly (string | RegExp)[] },
): string[] {
  const faults: string[] = [];
  for (const { paper, paperPt, pages } of sheets) {
    if (pages.length !== asked.pages) faults.push(`${paper}: ${pages.length} pages, not ${asked.pages}`);
    const all = pages.map((p) => p.words).join(' ');
    for (const word of asked.words) {
      const found = typeof word === 'string' ? all.includes(word) : word.test(all);
      if (!found) faults.push(`${paper}: no ${String(word)}`);
    }
    for (const [i, page] of pages.entries()) {
      const where = `${paper} page ${i + 1}`;
      const off = Math.max(Math.abs(page.widthPt - paperPt[0]), Math.abs(page.heightPt - paperPt[1]));
      if (off > PAPER_TOLERANCE_PT) faults.push(`${where}: ${page.widthPt} x ${page.heightPt} pt`);
      if (page.covered < LEAST_COVERED) faults.push(`${where}: nearly empty`);
      if (page.ink > MOST_INK) faults.push(`${where}: ${Math.round(100 * page.ink)} % ink`);
      if (Math.min(...page.bare) < LEAST_MARGIN_PT) faults.push(`${where}: drawn to the edge`);
    }
  }
  return faults;
}
