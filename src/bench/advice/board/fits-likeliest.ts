import type { Judged } from '../beliefs.ts';
import { expectedAt } from './expected-at.ts';

/** A reading within so many spreads of what is expected fits. Common practice, no source. */
const FITS_WITHIN = 3;

/** Whether a reading is what the likeliest set of faults would show there. Null where that is not in the circuit, is of several faults, or is not computed yet. */
export function fitsLikeliest({ belief, board }: Judged, point: string, value: number | null): boolean | null {
  const [likeliest] = belief.sets;
  if (!board || !likeliest || likeliest.chance < belief.unknown || likeliest.faults.length > 1) return null;
  const [fault] = likeliest.faults;
  const row = fault === undefined ? 0 : 1 + board.known.knowledge.faults.findIndex(({ id }) => id === fault);
  const expected = fault !== undefined && row === 0 ? null : expectedAt(board, point, row);
  if (!expected) return null;
  if (expected.value === null || value === null) return expected.value === value;
  return Math.abs(value - expected.value) <= FITS_WITHIN * expected.spread;
}
