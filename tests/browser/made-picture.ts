import type { Page } from 'playwright-core';

/** A PNG of four quarters, dark above light and cool beside warm, drawn by the browser itself. */
export async function fourQuarters(page: Page): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    canvas.width = 200;
    canvas.height = 160;
    const pen = canvas.getContext('2d')!;
    const colours = ['#283250', '#503223', '#b4c8e1', '#ebd2aa'];
    colours.forEach((colour, i) => {
      pen.fillStyle = colour;
      pen.fillRect((i % 2) * 100, Math.floor(i / 2) * 80, 100, 80);
    });
    const blob = await new Promise<Blob>((done) => canvas.toBlob((b) => done(b!), 'image/png'));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    return btoa(String.fromCharCode(...bytes));
  });
  return Buffer.from(base64, 'base64');
}
