/**
 * The place of a row in the list, as one whole number: rows of a later change have a lower rank, and rows of one change follow each other by
 * id. Exact in a double: 2³¹ events, with 2²² rows changed by one of them.
 */
const EVENTS = 2 ** 31;
const ROWS = 2 ** 22;

/** First and last rank of the rows that were changed by the event `seq`. */
export const ranksOf = (seq: number): { readonly first: number; readonly last: number } => {
  const first = (EVENTS - seq) * ROWS;
  return { first, last: first + ROWS - 1 };
};

/** Where a page ended, for the next one to go on; holds also when rows come and go in between. */
export const cursorAt = (row: { readonly changed_seq: number; readonly id: string }): string => `${row.changed_seq}.${row.id}`;

/** The row after which a page begins, or null for text that no page gave. */
export function parseCursor(text: string): { readonly seq: number; readonly id: string } | null {
  const match = /^(\d{1,10})\.(.+)$/s.exec(text);
  return match && { seq: Number(match[1]), id: match[2]! };
}
