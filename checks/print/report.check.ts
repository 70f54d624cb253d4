import jsQR from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ReportView } from '../../src/bench/report/index.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { rasterise } from './raster.ts';

const URL_OF_UNIT = 'http://192.0.2.7:4780/bench/grey-tern';
const photos = (letter: string, count: number) =>
  Array.from({ length: count }, (_, i) => ({ hash: `${letter}${i}`, side: 'front', caption: `view ${i}`, day: '2026-05-01' }));
const REPORT: ReportView = {
  title: 'Condition report: Tern TN-20',
  unit: '#7 Grey Tern',
  bench: 'Bench by the harbour',
  day: '2026-05-04',
  grade: {
    grade: 'B',
    means: 'Works fully; light marks',
    scale: 'salvor-1',
    text: 'Scuffed at the back.',
    criteria: [{ name: 'Marks of the shell', found: 'light', grade: 'B' }],
    open: ['Battery'],
  },
  photos: { before: photos('b', 4), during: [], after: photos('a', 5) },
  parts: [{ name: 'Board TN-20', state: 'of another one: Board of #3' }],
  replaced: ['New charging port'],
  work: ['New charging port'],
  ready: true,
  tests: Array.from({ length: 14 }, (_, i) => ({
    name: `Function ${i} works`,
    outcome: i === 3 ? ('signed-off' as const) : ('pass' as const),
    limits: ['It works three times of three, and after the unit was shaken gently.'],
    measured: ['Level −12.5 dB'],
    reason: i === 3 ? 'no cable at hand' : '',
  })),
  measured: [],
  cautions: ['It holds a lithium cell (UN 3481).'],
  url: URL_OF_UNIT,
};

let bytes: Uint8Array;
beforeAll(async () => {
  const picture = await sharp({ create: { width: 400, height: 300, channels: 3, background: '#2a6' } })
    .jpeg()
    .toBuffer();
  bytes = await openPrinter().reportSheet(REPORT, async () => ({ bytes: new Uint8Array(picture), mediaType: 'image/jpeg' }));
});

describe('a condition report on paper', () => {
  it('says everything that is on file, on pages from which nothing runs over', async () => {
    const document = await getDocument({ data: bytes.slice(), useSystemFonts: false }).promise;
    const words: string[] = [];
    for (let n = 1; n <= document.numPages; n++) {
      const { items } = await (await document.getPage(n)).getTextContent();
      for (const item of items) {
        if (!('str' in item) || item.str.trim() === '') continue;
        words.push(item.str);
        expect(item.transform[4] + item.width, item.str).toBeLessThanOrEqual(595.28 - 40);
        expect(item.transform[5], item.str).toBeGreaterThan(40);
      }
    }
    const text = words.join(' ').replaceAll(/\s+/g, ' ');
    for (const said of [
      'Condition report: Tern TN-20',
      '#7 Grey Tern',
      'Work done',
      'signed off, because: no cable at hand',
      'UN 3481',
      'Level −12.5 dB',
    ])
      expect(text).toContain(said);
    expect(document.numPages).toBeGreaterThan(1);
  });

  it('carries a code that leads to the file of the unit', async () => {
    const [first] = await rasterise(bytes.slice(), 6);
    const { width, height, grey } = first!;
    const rgba = new Uint8ClampedArray(width * height * 4);
    grey.forEach((value, i) => rgba.set([value, value, value, 255], 4 * i));
    const read = typeof jsQR === 'function' ? jsQR : (jsQR as unknown as { default: typeof jsQR }).default;
    expect(read(rgba, width, height)?.data).toBe(URL_OF_UNIT);
  });
});
