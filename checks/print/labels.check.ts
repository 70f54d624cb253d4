import jsQR from 'jsqr';
import { beforeAll, describe, expect, it } from 'vitest';
import { LABEL_SHEETS, layoutLabels, type Label, type LabelSheet } from '../../src/bench/labels/index.ts';
import type { PrintedLabels } from '../../src/bench/ports.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { rasterise, type Raster } from './raster.ts';

/** As a phone sees it from a hand's length away, and less than a printer prints. */
const PX_PER_MM = 8;

const labels: Label[] = Array.from({ length: 30 }, (_, i) => ({
  link: `http://192.0.2.7:4780/bench/item-019f0000-0000-7000-8000-${String(i).padStart(12, '0')}`,
  title: `#${i + 1}`,
  lines: ['Blue Tern with a name that is longer than its label is wide', 'Tern TN-10'],
}));

/** What an independent reader finds in an area of a page; empty when it finds no code. */
function readCode({ width, height, grey }: Raster, x: number, y: number, w: number, h: number): string {
  const [x0, y0, w0, h0] = [x, y, w, h].map((mm) => Math.round(mm * PX_PER_MM)) as [number, number, number, number];
  const rgba = new Uint8ClampedArray(4 * w0 * h0);
  for (let row = 0; row < h0; row++)
    for (let column = 0; column < w0; column++) {
      const inside = x0 + column < width && y0 + row < height;
      const value = inside ? grey[(y0 + row) * width + x0 + column]! : 255;
      rgba.set([value, value, value, 255], 4 * (row * w0 + column));
    }
  return jsQR(rgba, w0, h0)?.data ?? '';
}

const codesOf = (layout: PrintedLabels, rasters: readonly Raster[]): string[] =>
  layout.pages.flatMap((page, i) => page.map(({ code }) => readCode(rasters[i]!, code.x, code.y, code.sizeMm, code.sizeMm)));

describe.each(LABEL_SHEETS)('labels on $id', (sheet: LabelSheet) => {
  const layout = layoutLabels(labels, sheet, 3);
  let rasters: Raster[];
  beforeAll(async () => void (rasters = await rasterise(await openPrinter().labels(layout), PX_PER_MM)));

  it('are read back by an independent reader, each as its own', () => {
    expect(codesOf(layout, rasters)).toEqual(labels.map(({ link }) => link));
  });

  it('lie on the paper, apart from each other, on as many pages as are needed', () => {
    expect(rasters).toHaveLength(Math.ceil(33 / (sheet.columns * sheet.rows)));
    expect(rasters[0]!.width / PX_PER_MM).toBeCloseTo(sheet.paper === 'A4' ? 210 : 215.9, 0);
    for (const page of layout.pages)
      for (const { code, words } of page) {
        expect(code.x).toBeGreaterThan(0);
        expect(words.x).toBeGreaterThanOrEqual(code.x + code.sizeMm);
        expect(words.x + words.widthMm).toBeLessThan(layout.widthMm);
        expect(words.y + words.heightMm).toBeLessThan(layout.heightMm);
        expect(words.widthMm).toBeGreaterThan(10);
      }
  });

  it('keep their ink within their own label, long names too', () => {
    for (const { code, words } of layout.pages[0]!) {
      const right = words.x + words.widthMm + 0.2;
      expect(inkBetween(rasters[0]!, right, code.y, right + 1.5, code.y + code.sizeMm)).toBe(0);
    }
  });
});

it('is not read where no label is', async () => {
  const [sheet] = LABEL_SHEETS;
  const [raster] = await rasterise(await openPrinter().labels(layoutLabels(labels.slice(0, 1), sheet!, 3)), PX_PER_MM);
  expect(readCode(raster!, 0, 0, sheet!.widthMm, sheet!.heightMm)).toBe('');
});

/** Dark pixels in an area, mm from the upper left. */
function inkBetween({ width, grey }: Raster, x1: number, y1: number, x2: number, y2: number): number {
  let ink = 0;
  for (let y = Math.round(y1 * PX_PER_MM); y < y2 * PX_PER_MM; y++)
    for (let x = Math.round(x1 * PX_PER_MM); x < x2 * PX_PER_MM; x++) if (grey[y * width + x]! < 128) ink++;
  return ink;
}
