import type { Patch } from '../colour/white-balance.ts';
import type { PinRow } from './pin-rows.ts';
import type { Rectangle } from './rectangles.ts';
import type { Round } from './rounds.ts';

/** What an outline seems to be. */
export const OUTLINE_KINDS = ['part', 'pin-row', 'test-point', 'hole'] as const;
export type OutlineKind = (typeof OUTLINE_KINDS)[number];

/** A test point is at most this wide, a mounting hole at least (mm). */
const TEST_POINT_MM = 2.6;
const HOLE_MM = 1.6;

/** A dark and wide round in the middle is a hole, a bright and small one that fills the rectangle a test point; one row of pins that fills it is a row; the rest are parts. */
export function kindOf(rectangle: Rectangle, rows: readonly PinRow[], rounds: readonly Round[], perMm: number): OutlineKind {
  const middle = rounds.filter((round) => isInMiddle(round, rectangle));
  const longest = Math.max(rectangle.right - rectangle.left, rectangle.bottom - rectangle.top);
  const fills = ({ radius }: Round, share: number): boolean => 2 * radius > share * longest;
  if (middle.some((round) => round.dark && 2 * round.radius >= HOLE_MM * perMm && fills(round, 0.5))) return 'hole';
  if (middle.some((round) => !round.dark && longest <= TEST_POINT_MM * perMm && fills(round, 0.75))) return 'test-point';
  return rows.length === 1 && rectangle.pins === rows[0]!.pins.length && rectangle.from === 'row' ? 'pin-row' : 'part';
}

function isInMiddle({ x, y }: Round, { left, top, right, bottom }: Patch): boolean {
  return Math.hypot(x - (left + right) / 2, y - (top + bottom) / 2) < 0.2 * Math.min(right - left, bottom - top);
}
