import { createCanvas } from '@napi-rs/canvas';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as grey values, 0 black to 255 white, row by row. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** The pages of a PDF at so many pixels a millimetre, drawn by another program than the one that wrote it. */
export async function rasterise(pdf: Uint8Array, pxPerMm: number): Promise<Raster[]> {
  const task = getDocument({ data: pdf.slice(), verbosity: 0 });
  const document = await task.promise;
  const pages: Raster[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const viewport = page.getViewport({ scale: (pxPerMm * 25.4) / 72 });
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
    const canvas = createCanvas(width, height);
    const context = canvas.getContext('2d');
    await page.render({ canvas: canvas as never, canvasContext: context as never, viewport, background: 'white' }).promise;
    const { data } = context.getImageData(0, 0, width, height);
    pages.push({ width, height, grey: Uint8Array.from({ length: width * height }, (_, i) => data[4 * i]!) });
  }
  await task.destroy();
  return pages;
}
