import { encode } from 'uqr';
import type { PrintedLabel, PrintedLabels } from '../../bench/ports.ts';
import { PT, sheets, unscaled, type Sheet } from './sheet.ts';

/** White around a code, in its own squares (ISO/IEC 18004 asks for four, from memory). */
const QUIET = 4;
/** Baseline to baseline of the lines, in heights of their letters. */
const LEADING = 1.25;

/** Labels as a PDF at true scale, each with its code and its words; words that find no room are left out. */
export const drawLabels = (labels: PrintedLabels): Promise<Uint8Array> =>
  sheets('Labels', (sheet) => {
    unscaled(sheet);
    for (const page of labels.pages) {
      sheet.addPage({ size: [labels.widthMm * PT, labels.heightMm * PT], margin: 0 });
      sheet.scale(PT);
      for (const label of page) {
        drawCode(sheet, label);
        drawWords(sheet, label.words);
      }
    }
  });

/** The squares of one row that touch are one rectangle, so that no printer leaves a hair between them. */
function drawCode(sheet: Sheet, { link, code }: PrintedLabel): void {
  const { data, size } = encode(link, { ecc: 'M', border: 0 });
  const squareMm = code.sizeMm / (size + 2 * QUIET);
  const [x0, y0] = [code.x + QUIET * squareMm, code.y + QUIET * squareMm];
  data.forEach((row, y) => {
    for (let x = 0; x < size; x++) {
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
