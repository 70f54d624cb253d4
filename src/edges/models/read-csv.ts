import Papa from 'papaparse';
import type { CsvRow } from '../../bench/models/index.ts';

export interface CsvText {
  readonly rows: readonly CsvRow[];
  readonly commaIsDecimal: boolean;
}

/** The rows of a CSV text with the line on which each starts. Semicolons separate where the first line has one, else commas. */
export function readCsv(text: string): CsvText {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const delimiter = plain.split('\n', 1)[0]!.includes(';') ? ';' : ',';
  const rows: CsvRow[] = [];
  let line = 1;
  let start = 0;
  Papa.parse<string[]>(plain, {
    delimiter,
    newline: '\n',
    step: ({ data, meta }) => {
      rows.push({ line, cells: data });
      for (; start < meta.cursor; start++) if (plain[start] === '\n') line++;
    },
  });
  return { rows, commaIsDecimal: delimiter === ';' };
}
