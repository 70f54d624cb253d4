import type { Pattern } from '../../../core/fit/index.ts';
import { readPatternFile } from '../../../bench/fit/index.ts';
import { csvLines } from '../format/csv-lines.ts';

/** A pattern and how it is called here: the name of its file, or a typed one. */
export interface NamedPattern {
  readonly name: string;
  readonly pattern: Pattern;
}

export const PATTERN_FILES = '.kicad_mod,.csv,text/csv,text/plain';

/** The patterns of files, and a sentence for each that cannot be read. */
export async function readPatterns(files: FileList | null): Promise<{ readonly read: NamedPattern[]; readonly troubles: string[] }> {
  const read: NamedPattern[] = [];
  const troubles: string[] = [];
  for (const file of files ?? []) {
    const found = readPatternFile(file.name, await file.text(), csvLines);
    if (found.ok) read.push({ name: file.name, pattern: found.pattern });
    else troubles.push(`${file.name} cannot be read: ${found.detail}. Mend it and choose it again.`);
  }
  return { read, troubles };
}
