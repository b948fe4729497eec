import type { Picture } from '../../../../src/study/index.ts';

/** A picture opened in the page: its pixels for the worker, and a bitmap to draw. */
export interface OpenedPicture extends Picture {
  readonly name: string;
  readonly bitmap: ImageBitmap;
  readonly rgba: Uint8ClampedArray;
}

/** Longer side kept, px. More would show nothing that families of a brush's size could hold. */
const LONGEST = 1600;

/** Opens a file as sRGB pixels, turned upright. @throws DOMException when the browser cannot read it as a picture. */
export async function openPicture(file: File): Promise<OpenedPicture> {
  const full = await createImageBitmap(file, {
    imageOrientation: 'from-image',
    colorSpaceConversion: 'default',
  });
  const k = Math.min(1, LONGEST / Math.max(full.width, full.height));
  const width = Math.max(1, Math.round(full.width * k));
  const height = Math.max(1, Math.round(full.height * k));
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: true })!;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(full, 0, 0, width, height);
  full.close();
  const { data } = pen.getImageData(0, 0, width, height);
  return { name: file.name, width, height, rgba: data, bitmap: await createImageBitmap(canvas) };
}
