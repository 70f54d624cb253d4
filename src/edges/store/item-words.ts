import type { ItemRow } from '../../bench/views/index.ts';

/** Letters and digits of any script make a word; everything else separates. */
const SEPARATORS = /[^\p{L}\p{N}]+/u;

/** The words by which an item is found. */
export const wordsOf = (row: ItemRow): string => `${row.name} ${row.number} ${row.model_id} ${row.lot_title} ${row.seller}`;

/**
 * What the person typed as a question to the word index: each word must be the start of a word of the item. Undefined where nothing was typed
 * that could be found.
 */
export function matchOf(search: string | undefined): string | undefined {
  const words = (search ?? '').split(SEPARATORS).filter((word) => word !== '');
  return words.length === 0 ? undefined : words.map((word) => `"${word}"*`).join(' AND ');
}
