import type { Stage, Stakes } from './model.ts';

const DEPTH: Readonly<Record<Stage, number>> = { closed: 0, open: 1, 'board-out': 2 };

/** Minutes to open a unit from the stage in the stakes to the one that a check or remedy needs; none when it is open that far. */
export function openingMinutes(stakes: Stakes, stage: Stage): number {
  const steps = [0, stakes.openingMinutes.open, stakes.openingMinutes['board-out']];
  return steps.slice(DEPTH[stakes.stage] + 1, DEPTH[stage] + 1).reduce((a, b) => a + b, 0);
}

/** Minor units for so many minutes. */
export const minutesCost = (stakes: Stakes, minutes: number): number => (stakes.hourMinor * minutes) / 60;

/** The stakes once the unit is open at least that far. */
export const openedTo = (stakes: Stakes, stage: Stage): Stakes => (DEPTH[stage] > DEPTH[stakes.stage] ? { ...stakes, stage } : stakes);
