import { readKicadMod, type Pattern } from '../../core/fit/index.ts';
import type { CsvLine } from '../csv/csv-table.ts';
import { patternFromCsv } from './pads-csv.ts';

export type ReadFile = { readonly ok: true; readonly pattern: Pattern } | { readonly ok: false; readonly detail: string };

/**
 * The pattern of a file by its name: a `.kicad_mod` file, or else a table of pads, which `linesOf` takes apart. What is wrong is told with line and place. Its kind is as the file tells it,
 * for a table `other`.
 */
export function readPatternFile(name: string, text: string, linesOf: (text: string) => readonly CsvLine[]): ReadFile {
  if (/\.kicad_mod$/i.test(name)) {
    const read = readKicadMod(text);
    return read.ok ? read : { ok: false, detail: `line ${read.line}, column ${read.column}: ${read.message}` };
  }
  const { pattern, problems } = patternFromCsv(linesOf(text), { name, kind: 'other', basis: 'lands' });
  if (pattern) return { ok: true, pattern };
  const [{ line, field, message, next }] = problems as [(typeof problems)[0]];
  return { ok: false, detail: `line ${line}, ${field} ${message}. ${next.replace(/\.$/, '')}` };
}
