import type { Gesture } from './gesture.ts';

/** Minutes from start to stop, to a tenth, never negative. */
export const clockedMinutes = (startedMs: number, stoppedMs: number): number =>
  Math.max(0, Math.round((stoppedMs - startedMs) / 6000) / 10);

/** Time spent at a unit, by the clock. */
export const clockTime = (itemId: string, minutes: number, task: string): Gesture => ({
  said: `${minutes} min on the clock`,
  drafts: [{ kind: 'time-clocked', body: { item_id: itemId, minutes, task } }],
});
