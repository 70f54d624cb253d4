export type Cell = string | number | null;

/** Characters with which a spreadsheet begins a formula. */
const FORMULA = /^[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Lines of comma-separated values (RFC 4180) that a spreadsheet opens without running anything: a text that would begin a formula is led by an apostrophe. Numbers stay
 * numbers. An empty cell for null.
 */
export const csvText = (header: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [header, ...rows].map((row) => row.map(cellText).join(',')).join('\r\n') + '\r\n';

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = FORMULA.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
