import Papa from 'papaparse';
import type { CsvLine } from '../../bench/csv/csv-table.ts';

/** The lines of a CSV text; semicolons separate where the first line has one, else commas. */
export function csvLines(text: string): CsvLine[] {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const delimiter = plain.split('\n', 1)[0]!.includes(';') ? ';' : ',';
  const lines: CsvLine[] = [];
  let [line, start] = [1, 0];
  Papa.parse<string[]>(plain, {
    delimiter,
    newline: '\n',
    step: ({ data, meta }) => {
      lines.push({ line, cells: data });
      for (; start < meta.cursor; start++) if (plain[start] === '\n') line++;
    },
  });
  return lines;
}
