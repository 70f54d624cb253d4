import { runningTime, type Running } from './running-time.ts';

const clock = runningTime('salvor.clock');

/** The clock that runs on this device, for one unit at a time; it outlives a reload. */
export const useClock = (): Running | null => clock.use();

export const startClock = (itemId: string): void => clock.set({ itemId, startedMs: Date.now() });

export const stopClock = (): void => clock.set(null);

/** Minutes that a step books for itself are not counted once more by the clock of its unit, if that runs. */
export function bookedByStep(itemId: string, minutes: number): void {
  const running = clock.now();
  if (running?.itemId === itemId) clock.set({ itemId, startedMs: Math.min(Date.now(), running.startedMs + minutes * 60_000) });
}
