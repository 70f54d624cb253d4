import type { Stage, Stakes } from './model.ts';

const DEPTH: Readonly<Record<Stage, number>> = { closed: 0, open: 1, 'board-out': 2 };

/** Minutes to open a unit from the stage in the stakes to the one that a check or remedy needs; none when it is open that far. */
export function openingMinutes(stakes: Stakes, stage: Stage): number {
  const [from, to] = [DEPTH[stakes.stage], DEPTH[stage]];
  const opening = from < 1 && to >= 1 ? stakes.openingMinutes.open : 0;
  return opening + (from < 2 && to >= 2 ? stakes.openingMinutes['board-out'] : 0);
}

/** Minor units for so many minutes. */
export const minutesCost = (stakes: Stakes, minutes: number): number => (stakes.hourMinor * minutes) / 60;

/** The stakes once the unit is open at least that far. */
export const openedTo = (stakes: Stakes, stage: Stage): Stakes => (DEPTH[stage] > DEPTH[stakes.stage] ? { ...stakes, stage } : stakes);
