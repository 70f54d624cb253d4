import { createHash } from 'node:crypto';
import type { ComparisonShelf, KeptComparison } from '../../bench/ports.ts';
import { PhotoFiles } from './photo-files.ts';

const KEY = /^[0-9a-f]{64}$/;

/** Comparisons in a folder, each as a note and a picture. The note is written last: a comparison counts as kept once it is there. */
export function openComparisonShelf(dir: string): ComparisonShelf {
  const files = new PhotoFiles(dir);
  const read = (key: string, ending: string): Promise<Uint8Array | null> =>
    KEY.test(key) ? files.read(key, ending) : Promise.resolve(null);
  return {
    keyOf: (text) => createHash('sha256').update(text).digest('hex'),
    get: async (key) => {
      const note = await read(key, 'json');
      return note && (JSON.parse(new TextDecoder().decode(note)) as KeptComparison);
    },
    laid: (key) => read(key, 'jpg'),
    put: async (key, kept, laid) => {
      await files.write(key, 'jpg', laid);
      await files.write(key, 'json', JSON.stringify(kept));
    },
  };
}
