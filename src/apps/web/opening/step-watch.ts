import { useEffect, useState } from 'react';
import { runningTime } from '../bench/running-time.ts';

/** Takes the time of the step at hand. */
const watch = runningTime('salvor.step-watch');

/** Minutes since the step at hand began, to a tenth; null while the watch does not run for this item. */
export function useStepMinutes(itemId: string): number | null {
  const running = watch.use();
  const [nowMs, setNowMs] = useState(Date.now);
  const since = running?.itemId === itemId ? running.startedMs : null;
  useEffect(() => {
    if (since === null) return;
    const timer = setInterval(() => setNowMs(Date.now()), 3000);
    return () => clearInterval(timer);
  }, [since]);
  return since === null ? null : minutesBetween(since, nowMs);
}

/** Minutes of the step until now, as they go on record; 0 while the watch does not run for this item. */
export function stepMinutesNow(itemId: string): number {
  const running = watch.now();
  return running?.itemId === itemId ? minutesBetween(running.startedMs, Date.now()) : 0;
}

export const startWatch = (itemId: string): void => watch.set({ itemId, startedMs: Date.now() });

export const stopWatch = (): void => watch.set(null);

/** The next step begins now, if the watch runs. */
export function nextStep(itemId: string): void {
  if (watch.now()?.itemId === itemId) startWatch(itemId);
}

const minutesBetween = (fromMs: number, toMs: number): number => Math.max(0, Math.round((toMs - fromMs) / 6000) / 10);
