import type { PrintedLabel, PrintedLabels } from '../../bench/ports.ts';
import { QUIET, qrCode, type QrCode } from './qr-code.ts';
import { PT, sheets, unscaled, type Sheet } from './sheet.ts';

/** Baseline to baseline of the lines, in heights of their letters. */
const LEADING = 1.25;

/** Labels as a PDF at true scale, each with its code and its words; words that find no room are left out. */
export async function drawLabels(labels: PrintedLabels): Promise<Uint8Array> {
  const pages = await Promise.all(
    labels.pages.map((page) => Promise.all(page.map(async (label) => ({ label, code: await qrCode(label.link) })))),
  );
  return sheets('Labels', (sheet) => {
    unscaled(sheet);
    for (const page of pages) {
      sheet.addPage({ size: [labels.widthMm * PT, labels.heightMm * PT], margin: 0 });
      sheet.scale(PT);
      for (const { label, code } of page) {
        drawCode(sheet, label, code);
        drawWords(sheet, label.words);
      }
    }
  });
}

/** The squares of one row that touch are one rectangle, so that no printer leaves a hair between them. */
function drawCode(sheet: Sheet, { code: { x: left, y: top, sizeMm } }: PrintedLabel, squares: QrCode): void {
  const squareMm = sizeMm / (squares.length + 2 * QUIET);
  const [x0, y0] = [left + QUIET * squareMm, top + QUIET * squareMm];
  squares.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      sheet.rect(x0 + from * squareMm, y0 + y * squareMm, (x + 1 - from) * squareMm, squareMm);
    }
  });
  sheet.fill('black');
}

function drawWords(sheet: Sheet, { x, y, widthMm, heightMm, title, titleMm, lines, lineMm }: PrintedLabel['words']): void {
  sheet.fillColor('black').fontSize(titleMm);
  const shrunkMm = Math.max(lineMm, Math.min(titleMm, (titleMm * widthMm) / sheet.widthOfString(title)));
  let down = y;
  for (const [text, mm] of [[title, shrunkMm] as const, ...lines.map((line) => [line, lineMm] as const)]) {
    sheet.fontSize(mm);
    for (const line of wrapped(sheet, text, widthMm)) {
      if (down + mm > y + heightMm) return;
      sheet.text(line, x, down + mm, { baseline: 'alphabetic', lineBreak: false });
      down += mm * LEADING;
    }
  }
}

/** A text in lines of whole words; a word that is wider than the label is cut. */
function wrapped(sheet: Sheet, text: string, widthMm: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const longer = `${lines.at(-1) ?? ''} ${word}`.trim();
    if (lines.length > 0 && sheet.widthOfString(longer) <= widthMm) lines[lines.length - 1] = longer;
    else lines.push(cut(sheet, word, widthMm));
  }
  return lines;
}

/** As much of a word as fits into a width, with an ellipsis where it was cut. */
function cut(sheet: Sheet, text: string, widthMm: number): string {
  if (sheet.widthOfString(text) <= widthMm) return text;
  const letters = [...text];
  while (letters.length > 0 && sheet.widthOfString(`${letters.join('')}…`) > widthMm) letters.pop();
  return `${letters.join('')}…`;
}
