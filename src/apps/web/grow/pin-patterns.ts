import type { Place } from '../board/frame.ts';

type Pin = readonly [x: number, y: number];

/** `count` pins in a row from the middle of the first to the middle of the last; one pin stays where the first is. */
export function rowOfPins(from: Place, to: Place, count: number): Pin[] {
  const share = (i: number): number => (count === 1 ? 0 : i / (count - 1));
  return Array.from({ length: count }, (_, i) => [from.x + share(i) * (to.x - from.x), from.y + share(i) * (to.y - from.y)] as const);
}

/** How the pins of a grid are counted: along each row in turn, or around as on a chip with two rows of legs. */
export type Counting = 'rows' | 'around';

export interface GridShape {
  /** Pins along the first row. */
  readonly columns: number;
  readonly rows: number;
  readonly counting: Counting;
}

/**
 * The pins of an upright grid between pin 1 and the far corner. "rows" begins each row on the side of pin 1; "around" counts the first row outward
 * and the next row back, as the legs of a chip are counted. The first row runs along the longer side unless the count says otherwise.
 */
export function gridOfPins(first: Place, far: Place, { columns, rows, counting }: GridShape): Pin[] {
  const isWide = Math.abs(far.x - first.x) >= Math.abs(far.y - first.y) === columns >= rows;
  const along = (i: number, of: number, from: number, to: number): number => (of === 1 ? from : from + (i / (of - 1)) * (to - from));
  return Array.from({ length: rows * columns }, (_, i) => {
    const row = Math.floor(i / columns);
    const column = counting === 'around' && row % 2 === 1 ? columns - 1 - (i % columns) : i % columns;
    return isWide
      ? ([along(column, columns, first.x, far.x), along(row, rows, first.y, far.y)] as const)
      : ([along(row, rows, first.x, far.x), along(column, columns, first.y, far.y)] as const);
  });
}
