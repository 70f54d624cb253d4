import type { ReferenceReading } from '../../../bench/models/index.ts';

export interface PointSpread {
  /** V, Ω or A. */
  readonly mean: number;
  /** Sample standard deviation; 0 for one board. */
  readonly spread: number;
  readonly boards: number;
  /** Boards that showed OL. */
  readonly openBoards: number;
}

/** Mean and spread over good boards of the readings at one point in one mode; null when there are none that show a number. */
export function spreadOf(readings: readonly ReferenceReading[], point: string, mode: string): PointSpread | null {
  const here = readings.filter((each) => each.point === point && each.mode === mode);
  const values = here.flatMap((each) => (each.value === null ? [] : [each.value]));
  if (values.length === 0) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const spread = values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0;
  return { mean, spread, boards: here.length, openBoards: here.length - values.length };
}
