import { meets, type Figure } from './figure.ts';

const verdict = (figure: Figure): string => {
  const met = meets(figure);
  return met === undefined ? 'shown' : met ? 'met' : 'missed';
};

/** The figures as a table for a terminal. */
export function textTable(figures: readonly Figure[]): string {
  const rows = figures.map((f) => [f.figure, `${f.value} ${f.unit}`.trim(), f.target, verdict(f), f.reference]);
  const all = [['figure', 'value', 'target', '', 'reference'], ...rows];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...all.map((row) => row[column]!.length)));
  return all.map((row) => row.map((cell, column) => (column < 4 ? cell.padEnd(widths[column]!) : cell)).join('  ')).join('\n');
}

/** The figures as a table in Markdown, with the machine that they were measured on. */
export function markdownTable(figures: readonly Figure[], machine: string, day: string): string {
  const rows = figures.map((f) => `| ${f.figure} | ${f.value} ${f.unit} | ${f.target} | ${verdict(f)} | ${f.reference} |`);
  return [`Measured ${day} on ${machine}.`, '', '| figure | value | target | | against |', '|---|---|---|---|---|', ...rows].join('\n');
}

/** `page` with the block of one study replaced, or added at the end. */
export function withBlock(page: string, study: string, block: string): string {
  const open = `<!-- ${study}: written by the measurement, not by hand -->`;
  const close = `<!-- end of ${study} -->`;
  const text = `${open}\n\n${block}\n\n${close}`;
  const start = page.indexOf(open);
  if (start < 0) return `${page.trimEnd()}\n\n${text}\n`;
  const end = page.indexOf(close, start) + close.length;
  return page.slice(0, start) + text + page.slice(end);
}
