import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { readKicadMod, type Pattern } from '../../src/core/fit/index.ts';

const ROOT = join(import.meta.dirname, '../..');
const PLACES = ['/usr/share/kicad/footprints', join(ROOT, '.cache/kicad-footprints/usr/share/kicad/footprints')];

export type PairAnswer = 'fits' | 'one way' | 'no' | 'review';
export interface Pair {
  readonly part: string;
  readonly place: string;
  readonly answer: PairAnswer;
  readonly leastOverlap: number | null;
  readonly farthestMm: number | null;
}

/** The pairs of SOURCE.md, from its table. */
export function pairs(): Pair[] {
  const text = readFileSync(join(import.meta.dirname, 'SOURCE.md'), 'utf8');
  const rows = text.split('\n').filter((line) => /^\| \S+ +\| \S+ +\| (fits|one way|no|review) /.test(line));
  return rows.map((row) => {
    const [part, place, answer, overlap, far] = row
      .split('|')
      .slice(1, 6)
      .map((cell) => cell.trim());
    return {
      part: part!,
      place: place!,
      answer: answer as PairAnswer,
      leastOverlap: numberOrNull(overlap!),
      farthestMm: numberOrNull(far!),
    };
  });
}

const numberOrNull = (cell: string): number | null => (cell === '' ? null : Number(cell));

/** Path of every land pattern of the library by its name; undefined where it is not on this machine. */
export function library(): ReadonlyMap<string, string> | undefined {
  const root = PLACES.find((path) => existsSync(path));
  if (!root) return undefined;
  const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.kicad_mod'));
  return new Map(files.sort().map((file) => [basename(file, '.kicad_mod'), join(root, file)]));
}

export const ABSENT = 'the land patterns of kicad-footprints are not on this machine (on Debian: sudo apt-get install kicad-footprints)';

/** Throws with line and column when the file cannot be read. */
export function patternAt(path: string): Pattern {
  const read = readKicadMod(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(`${path}:${read.line}:${read.column} ${read.message}`);
  return read.pattern;
}
