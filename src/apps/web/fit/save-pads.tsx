import { padsCsv } from '../../../bench/fit/index.ts';
import type { NamedPattern } from './named-pattern.ts';

/** The pads as a table in a file, to be used again. */
export function SavePads({ name, pattern }: NamedPattern) {
  const file = `${name.replaceAll(/[^\p{L}\p{N}._-]+/gu, '-') || 'pads'}.csv`.replace(/(\.csv|\.kicad_mod)+\.csv$/i, '.csv');
  return (
    <a className="button" download={file} href={`data:text/csv;charset=utf-8,${encodeURIComponent(padsCsv(pattern))}`}>
      Save them as a table
    </a>
  );
}
