import type { ItemQuery } from '../../bench/ports.ts';
import type { ItemRow } from '../../bench/views/index.ts';

/**
 * The words under which a row is found: every beginning of every word, so that "ter" finds "tern" by one look-up, and one word for each set
 * of filters that it passes, so that any combination of filters is one look-up too. A step of `migrations/` must follow a change here.
 */

/** A longer word is known by its first letters. */
const LONGEST = 32;

type Filtered = Pick<ItemRow, 'status' | 'kind' | 'model_id' | 'place'>;
const FILTERS = ['status', 'kind', 'model_id', 'place'] as const;

/** All words of a row, separated by blanks. */
export const wordsOf = (row: ItemRow): string => [...new Set([...filterWords(row), ...beginningsOf(row)])].join(' ');

/** Every beginning of every word under which a row is searched for, once. */
export function beginningsOf(row: ItemRow): ReadonlySet<string> {
  const words = new Set<string>();
  for (const word of plainWords(`${row.name} ${row.model_id} ${row.lot_title} ${row.seller}`))
    addBeginnings(words, word.replace('#', ''), '');
  addBeginnings(words, String(row.number), '');
  addBeginnings(words, String(row.number), '#');
  return words;
}

/** The beginnings that a row must have, all of them. */
export const beginningsWanted = (query: ItemQuery): string[] =>
  plainWords(query.search ?? '').map((word) => [...word].slice(0, LONGEST).join(''));

/** The match expression of a query; null where every row matches. */
export function matchOf(query: ItemQuery): string | null {
  const words = beginningsWanted(query).map(quoted);
  const filters = filterWordsOf(query).map(quoted);
  const all = filters.length > 0 ? [...words, `(${filters.join(' OR ')})`] : words;
  return all.length > 0 ? all.join(' AND ') : null;
}

/** Lower case, without accents; a number after "#" keeps its sign, which makes it a stock number. */
const plainWords = (text: string): string[] =>
  (
    text
      .normalize('NFKD')
      .replace(/\p{M}+/gu, '')
      .toLowerCase()
      .match(/#?[\p{L}\p{N}]+/gu) ?? []
  ).map((word) => (/^#\d+$/.test(word) ? word : word.replace('#', '')));

function addBeginnings(words: Set<string>, word: string, sign: string): void {
  const letters = [...word].slice(0, LONGEST - sign.length);
  for (let length = 1; length <= letters.length; length++) words.add(sign + letters.slice(0, length).join(''));
}

/** One word for each way of choosing from the filters. */
function filterWords(row: Filtered): string[] {
  const parts = FILTERS.map((filter, index) => partOf(index, row[filter]));
  return Array.from({ length: 2 ** parts.length - 1 }, (_, set) => joined(parts.filter((_part, index) => ((set + 1) >> index) & 1)));
}

/** The words of which a row must have one. */
function filterWordsOf({ status, kind, model, place }: ItemQuery): string[] {
  const fixed = [kind, model, place].flatMap((value, index) => (value === undefined ? [] : [partOf(index + 1, value)]));
  if (status) return [...new Set(status)].map((one) => joined([partOf(0, one), ...fixed]));
  return fixed.length > 0 ? [joined(fixed)] : [];
}

const joined = (parts: readonly string[]): string => `:${parts.join(':')}`;
const partOf = (filter: number, value: string): string =>
  `${filter}${value.replace(/[^A-Za-z0-9_.-]/gu, (letter) => `%${letter.codePointAt(0)!.toString(16)}%`)}`;
const quoted = (word: string): string => `"${word}"`;
