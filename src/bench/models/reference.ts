import type { TestPoint } from '../../core/diagnosis/model.ts';
import { median, medianDeviation } from '../../core/numeric/index.ts';
import type { Model } from './schema.ts';

type Mode = TestPoint['mode'];
/** What known-good boards show at a point; a mean of null is OL. */
export type Reference = NonNullable<TestPoint['reference']>;

/**
 * What an ordinary hand-held meter may be off by: a share of the reading and a fixed part in V, Ω or A (for ohms the
 * leads, too). Common practice, no source.
 */
const METER: Readonly<Record<Mode, { readonly share: number; readonly fixed: number }>> = {
  volts: { share: 0.005, fixed: 0.01 },
  ohms: { share: 0.01, fixed: 0.3 },
  diode: { share: 0.01, fixed: 0.005 },
  amps: { share: 0.015, fixed: 0.001 },
};

/** Boards differ, and one or two cannot show by how much: then this share of the value. Common practice, no source. */
const BOARD_TO_BOARD = 0.03;
const ENOUGH_BOARDS = 3;

/**
 * What known-good boards show at one point: median, and spread as MAD × 1.4826, at least what the meter itself may be
 * off by. One reading per board counts (its median). When most boards read OL the mean is null. Null without readings.
 * What the bench has learned of the point comes first.
 */
export function referenceOf(model: Model, point: string, mode: Mode): Reference | null {
  const own = model.own?.references.get(point);
  if (own) return own;
  const boards = new Map<string, (number | null)[]>();
  for (const reading of model.readings) {
    if (reading.point !== point || reading.mode !== mode) continue;
    boards.set(reading.board, [...(boards.get(reading.board) ?? []), reading.value]);
  }
  const each = [...boards.values()].map(oneBoard);
  const values = each.filter((value) => value !== null);
  if (each.length === 0) return null;
  if (values.length * 2 <= each.length) return { mean: null, spread: 0, boards: each.length };
  const mean = median(values);
  return { mean, spread: Math.max(medianDeviation(values), floorOf(mode, mean, values.length)), boards: values.length };
}

function oneBoard(readings: readonly (number | null)[]): number | null {
  const values = readings.filter((value) => value !== null);
  return values.length * 2 > readings.length ? median(values) : null;
}

/** The least that readings of so many boards are taken to differ by. */
export function floorOf(mode: Mode, mean: number, boards: number): number {
  const { share, fixed } = METER[mode];
  const between = boards < ENOUGH_BOARDS ? BOARD_TO_BOARD : 0;
  return Math.abs(mean) * Math.max(share, between) + fixed;
}
