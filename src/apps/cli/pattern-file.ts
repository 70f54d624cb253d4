import { basename } from 'node:path';
import type { Pattern } from '../../core/fit/index.ts';
import { readPatternFile } from '../../bench/fit/index.ts';
import type { CliParts } from './cli-parts.ts';
import { csvLines } from './csv-lines.ts';
import { MOST_BYTES, readText } from './read-input.ts';
import { misuse } from './stop.ts';

/** The land pattern of a file. */
export async function patternFile(parts: CliParts, file: string): Promise<Pattern> {
  const read = readPatternFile(basename(file), await readText(parts, file, MOST_BYTES.pads), csvLines);
  if (!read.ok) throw misuse('bad-pattern', { where: file, detail: read.detail });
  return read.pattern;
}

/** Writes a file that the person named. */
export async function writeOut({ writeFile }: CliParts, file: string, bytes: Uint8Array): Promise<void> {
  await writeFile(file, bytes).catch(() => {
    throw misuse('cannot-write', { detail: file });
  });
}
