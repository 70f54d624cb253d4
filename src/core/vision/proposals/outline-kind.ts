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

/** A round that fills the rectangle is a hole where it is dark and wide, a test point where it is bright and small; one row of pins that fills it is a row; the rest are parts. */
export function kindOf(rectangle: Rectangle, rows: readonly PinRow[], rounds: readonly Round[], perMm: number): OutlineKind {
  const round = rectangle.round ?? rounds.find((each) => fills(each, rectangle));
  const acrossMm = (2 * (round?.radius ?? 0)) / perMm;
  if (round?.dark && acrossMm >= HOLE_MM) return 'hole';
  if (round && !round.dark && acrossMm <= TEST_POINT_MM) return 'test-point';
  return rows.length === 1 && rectangle.pins === rows[0]!.pins.length && rectangle.from === 'row' ? 'pin-row' : 'part';
}

function fills({ x, y, radius }: Round, { left, top, right, bottom }: Patch): boolean {
  const [w, h] = [right - left, bottom - top];
  const near = Math.hypot(x - (left + right) / 2, y - (top + bottom) / 2) < 0.2 * Math.min(w, h);
  return near && 2 * radius > 0.75 * Math.max(w, h) && 2 * radius < 1.25 * Math.min(w, h);
}
