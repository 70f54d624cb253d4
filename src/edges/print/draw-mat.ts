import type { PrintedMat } from '../../bench/ports.ts';
import type { MatShape } from '../../core/teardown/index.ts';
import { PT, sheets, unscaled, type Sheet } from './sheet.ts';

/** Widths of lines in mm: fine where one measures, strong where one looks. */
const LINE_MM = { ruler: 0.3, tick: 0.1, length: 1, place: 0.25, tray: 0.25, outline: 0.25 } as const;

/** A mat as a PDF at true scale: its pages have the size of the paper, and viewers are told to print them unscaled. */
export const drawMat = (mat: PrintedMat): Promise<Uint8Array> =>
  sheets('Mat for fasteners', (sheet) => {
    unscaled(sheet);
    for (const { shapes } of mat.pages) {
      sheet.addPage({ size: [mat.widthMm * PT, mat.heightMm * PT], margin: 0 });
      sheet.scale(PT);
      for (const shape of shapes) drawShape(sheet, shape);
    }
  });

function drawShape(sheet: Sheet, shape: MatShape): void {
  if (shape.kind === 'text') return drawText(sheet, shape);
  if (shape.kind === 'circle') sheet.circle(shape.x, shape.y, shape.r).lineWidth(LINE_MM[shape.what]);
  if (shape.kind === 'rect') sheet.rect(shape.x, shape.y, shape.width, shape.height).lineWidth(LINE_MM.outline);
  if (shape.kind === 'line') sheet.moveTo(shape.x1, shape.y1).lineTo(shape.x2, shape.y2).lineWidth(LINE_MM[shape.what]);
  if (shape.kind === 'circle' && shape.what === 'tray') sheet.dash(1, { space: 1 });
  sheet.stroke('black').undash();
}

function drawText(sheet: Sheet, { x, y, text, mm, anchor }: Extract<MatShape, { kind: 'text' }>): void {
  sheet.fontSize(mm).fillColor('black');
  const left = anchor === 'middle' ? x - sheet.widthOfString(text) / 2 : x;
  sheet.text(text, left, y, { baseline: 'alphabetic', lineBreak: false });
}
