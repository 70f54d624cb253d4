import { METER_SCALES } from '../meter-scale.ts';
import { inverse } from '../readings/outcome-bands.ts';
import type { BoardSense } from './board-sense.ts';

/**
 * A reading as it would be if good boards read what their circuit says: moved, on the scale of the meter, by what measured good boards are off from it. One
 * board counts half, two count two thirds, and so on, because boards differ. OL stays OL, and without a measured reference nothing changes.
 */
export function recentred(sense: BoardSense, point: number, value: number | null): number | null {
  const { mode, id } = sense.baseline.kernels.dictionary.points[point]!;
  const off = offset(sense, point, id);
  return value === null || off === 0 ? value : inverse(mode, METER_SCALES[mode].of(value) - off);
}

/** The way back: what would be read where the circuit says `value`. */
export function asMeasured(sense: BoardSense, point: number, value: number): number {
  const { mode, id } = sense.baseline.kernels.dictionary.points[point]!;
  const off = offset(sense, point, id);
  return off === 0 || !Number.isFinite(value) ? value : inverse(mode, METER_SCALES[mode].of(value) + off);
}

function offset({ baseline, references }: BoardSense, point: number, id: string): number {
  const reference = references.get(id);
  const expected = healthyCentre(baseline, point);
  if (!reference || reference.mean === null || Number.isNaN(expected)) return 0;
  const { mode } = baseline.kernels.dictionary.points[point]!;
  return ((METER_SCALES[mode].of(reference.mean) - expected) * reference.boards) / (reference.boards + 1);
}

/** Mean of the healthy board on the scale of the meter; NaN where it reads OL or is not computed. */
function healthyCentre({ kernels }: BoardSense['baseline'], point: number): number {
  const { draws } = kernels.dictionary;
  const from = point * kernels.rows * draws;
  let sum = 0;
  for (let d = 0; d < draws; d++) sum += kernels.centre[from + d]!;
  return sum / draws;
}
