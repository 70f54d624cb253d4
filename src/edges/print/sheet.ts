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

/** The catalogue of a document, which the library writes and does not type. */
interface Catalogue {
  readonly _root: { readonly data: Record<string, unknown> };
}

/** Asks viewers not to fit the page to the printer’s margins (ISO 32000-1, table 150). The library writes the object out at its end. */
export function unscaled(sheet: Sheet): void {
  // oxlint-disable-next-line no-underscore-dangle -- the library's own name for it
  (sheet as unknown as Catalogue)._root.data['ViewerPreferences'] = sheet.ref({ PrintScaling: 'None' });
}
