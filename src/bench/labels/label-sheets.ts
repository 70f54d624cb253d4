/** Sizes of paper, mm (ISO 216; ANSI/ASME Y14.1, from memory). */
const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] } as const;
export type LabelPaper = keyof typeof PAPERS;

/** A sheet of labels: so many beside and below each other, in the middle of the paper. */
export interface LabelSheet {
  readonly id: string;
  readonly paper: LabelPaper;
  readonly columns: number;
  readonly rows: number;
  /** Of one label, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** Between two labels beside each other, mm; below each other they touch. */
  readonly gapMm: number;
}

const sheet = (paper: LabelPaper, columns: number, rows: number, widthMm: number, heightMm: number, gapMm: number): LabelSheet => ({
  id: `${paper.toLowerCase()}-${columns * rows}`,
  paper,
  columns,
  rows,
  widthMm,
  heightMm,
  gapMm,
});

/** Sheets as they are sold. Common practice, no source: measure yours, and print on plain paper first. */
export const LABEL_SHEETS: readonly LabelSheet[] = [
  sheet('A4', 3, 8, 70, 37, 0),
  sheet('A4', 3, 7, 63.5, 38.1, 2.54),
  sheet('A4', 5, 13, 38.1, 21.2, 2.5),
  sheet('A4', 2, 4, 99.1, 67.7, 2.5),
  sheet('Letter', 3, 10, 66.675, 25.4, 3.175),
  sheet('Letter', 2, 5, 101.6, 50.8, 4.7625),
];

/** The sheet of an id, such as a4-24. */
export const sheetOf = (id: string): LabelSheet | undefined => LABEL_SHEETS.find((each) => each.id === id);

export const paperMm = (paper: LabelPaper): readonly [width: number, height: number] => PAPERS[paper];

/** Where the label of an index lies on its page, mm from the upper left; counted from left to right, then down. */
export function labelAt(
  { paper, columns, rows, widthMm, heightMm, gapMm }: LabelSheet,
  index: number,
): { readonly x: number; readonly y: number } {
  const [width, height] = PAPERS[paper];
  const left = (width - columns * widthMm - (columns - 1) * gapMm) / 2;
  const top = (height - rows * heightMm) / 2;
  return { x: left + (index % columns) * (widthMm + gapMm), y: top + (Math.floor(index / columns) % rows) * heightMm };
}
