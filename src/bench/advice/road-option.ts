import type { Outcome } from '../../core/planning/index.ts';
import type { Stage } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { Road } from '../views/index.ts';

/** One way to go on with a unit, in exact numbers; the view rounds them. */
export interface RoadOption {
  readonly road: Road;
  readonly possible: boolean;
  /** All money and minutes from here on counted. */
  readonly outcomes: readonly Outcome[];
  /** That it ends as a working unit. */
  readonly chance: number;
  readonly minutes: number;
  /** Cash to be spent on parts, expected. */
  readonly spendMinor: number;
  readonly why: readonly string[];
}

export const hourly = (minutes: number, hourMinor: number): number => (minutes / 60) * hourMinor;

/** Minutes to get from one stage of opening to a deeper one, and closed again; none when it is open so far already. */
export function openingMinutes(model: Model, from: Stage, to: Stage): number {
  const { open, board_out: boardOut } = model.file.opening_minutes;
  const depth: Record<Stage, number> = { closed: 0, open, 'board-out': open + boardOut };
  return Math.max(0, depth[to] - depth[from]);
}
