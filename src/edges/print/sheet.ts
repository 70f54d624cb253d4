import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

/** Points of PDF in a millimetre: 72 to the inch. */
export const PT = 72 / 25.4;

/** The one face of all sheets: DejaVu Sans, embedded, so that Ω, µ and other alphabets print anywhere. */
export const FONT = require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf');

export type Sheet = PDFKit.PDFDocument;

/** The bytes of a PDF whose pages `draw` adds, upright and without margins of its own; `title` stands in its properties. */
export async function sheets(title: string, draw: (sheet: Sheet) => void): Promise<Uint8Array> {
  const { default: PDFDocument } = await import('pdfkit');
  const sheet = new PDFDocument({ autoFirstPage: false, margin: 0, info: { Title: title, Creator: 'Salvor' }, font: FONT });
  const chunks: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    sheet.on('data', (chunk: Buffer) => chunks.push(chunk));
    sheet.on('end', resolve);
    sheet.on('error', reject);
  });
  draw(sheet);
  sheet.end();
  await ended;
  return new Uint8Array(Buffer.concat(chunks));
}
