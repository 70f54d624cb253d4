import type { PrintedLabel, PrintedLabels } from '../ports.ts';
import { labelAt, paperMm, type LabelSheet } from './label-sheets.ts';

/** What is printed on one label. */
export interface Label {
  /** What the code opens. */
  readonly link: string;
  /** Large: the stock number, or how a bag is called. */
  readonly title: string;
  readonly lines: readonly string[];
}

/** Free at the edge of a label, so that a sheet that lies a little askew loses nothing, mm. */
const EDGE_MM = 2;
const LARGEST_CODE_MM = 30;
/** Height of the title as a share of the label, and that of a line as a share of the title. */
const TITLE_SHARE = 0.2;
const LARGEST_TITLE_MM = 6;
const LINE_SHARE = 0.6;

/** Labels on sheets, page by page; the first `skip` places of the first sheet are left free, since they are used already. */
export function layoutLabels(labels: readonly Label[], sheet: LabelSheet, skip = 0): PrintedLabels {
  const [widthMm, heightMm] = paperMm(sheet.paper);
  const perPage = sheet.columns * sheet.rows;
  const count = Math.max(1, Math.ceil((labels.length + skip) / perPage));
  const pages: PrintedLabel[][] = Array.from({ length: count }, () => []);
  labels.forEach((label, i) => pages[Math.floor((i + skip) / perPage)]!.push(placed(label, sheet, i + skip)));
  return { widthMm, heightMm, pages };
}

/** The code on the left, the words beside it. */
function placed({ link, title, lines }: Label, sheet: LabelSheet, index: number): PrintedLabel {
  const { x, y } = labelAt(sheet, index);
  const codeMm = Math.min(sheet.heightMm - 2 * EDGE_MM, sheet.widthMm / 2 - EDGE_MM, LARGEST_CODE_MM);
  const titleMm = Math.min(LARGEST_TITLE_MM, TITLE_SHARE * sheet.heightMm);
  const textX = x + EDGE_MM + codeMm;
  const codeY = y + (sheet.heightMm - codeMm) / 2;
  const textY = codeY + EDGE_MM / 2;
  return {
    link,
    code: { x: x + EDGE_MM, y: codeY, sizeMm: codeMm },
    words: {
      x: textX,
      y: textY,
      widthMm: x + sheet.widthMm - EDGE_MM - textX,
      heightMm: y + sheet.heightMm - EDGE_MM - textY,
      title,
      titleMm,
      lines: [...lines],
      lineMm: titleMm * LINE_SHARE,
    },
  };
}
