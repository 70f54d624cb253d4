import type { BoardSide } from '../../core/vision/index.ts';

/** A place of a board whose millimetres are known. */
export interface KnownMark {
  readonly id: string;
  readonly name: string;
  readonly boardMm: readonly [number, number];
}

interface Placed {
  readonly ref: string;
  readonly side: BoardSide;
  readonly x: number;
  readonly y: number;
}

/** The corners of a board as one side is seen, then the parts that the model places on that side, by name. */
export function knownMarks(
  board: { readonly width_mm: number; readonly height_mm: number } | undefined,
  parts: readonly Placed[],
  side: BoardSide,
): KnownMark[] {
  const own = parts
    .filter((part) => part.side === side)
    .map(({ ref, x, y }): KnownMark => ({ id: `part ${ref}`, name: `Middle of ${ref}`, boardMm: [x, y] }))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  return [...(board ? cornersOf(board.width_mm, board.height_mm, side) : []), ...own];
}

function cornersOf(width: number, height: number, side: BoardSide): KnownMark[] {
  const [left, right] = side === 'front' ? [0, width] : [width, 0];
  const corner = (name: string, x: number, y: number): KnownMark => ({ id: `corner ${name}`, name: `Corner ${name}`, boardMm: [x, y] });
  return [
    corner('lower left', left, 0),
    corner('lower right', right, 0),
    corner('upper right', right, height),
    corner('upper left', left, height),
  ];
}

/** Two marks a known distance apart, for a board of which nothing is placed: the first is the origin. */
export const distanceMarks = (apartMm: number): KnownMark[] => [
  { id: 'distance from', name: 'One end', boardMm: [0, 0] },
  { id: 'distance to', name: 'Other end', boardMm: [apartMm, 0] },
];
