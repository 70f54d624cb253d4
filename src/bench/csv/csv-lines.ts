import type { CsvLine } from './csv-table.ts';

/** Takes a CSV text apart row by row; `cursor` is where in the text the row ends. */
export type ParseCsv = (
  text: string,
  options: {
    readonly delimiter: string;
    readonly newline: '\n';
    readonly step: (row: { readonly data: string[]; readonly meta: { readonly cursor: number } }) => void;
  },
) => void;

/** The lines of a CSV text, taken apart by `parse`; semicolons separate where the first line has one, else commas. */
export function csvLines(text: string, parse: ParseCsv): CsvLine[] {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const delimiter = plain.split('\n', 1)[0]!.includes(';') ? ';' : ',';
  const lines: CsvLine[] = [];
  let [line, start] = [1, 0];
  parse(plain, {
    delimiter,
    newline: '\n',
    step: ({ data, meta }) => {
      lines.push({ line, cells: data });
      for (; start < meta.cursor; start++) if (plain[start] === '\n') line++;
    },
  });
  return lines;
}
