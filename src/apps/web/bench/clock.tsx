import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { clockedMinutes, clockTime } from '../actions/clock-time.ts';
import { duration } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { startClock, stopClock, useClock } from './clock-store.ts';
import { useUnit } from './unit-context.ts';

/** Start and stop of the time on this unit; while it runs, gestures ask for no minutes of their own. */
export function Clock() {
  const { file } = useUnit();
  const clock = useClock();
  const { record, busy } = useRecorder();
  if (clock === null)
    return (
      <button type="button" onClick={() => startClock(file.row.id)}>
        Start the clock
      </button>
    );
  if (clock.itemId !== file.row.id)
    return (
      <p className="small">
        The clock runs <Link href={`/bench/${encodeURIComponent(clock.itemId)}`}>on another unit</Link>.
      </p>
    );
  const stop = async (): Promise<void> => {
    const minutes = clockedMinutes(clock.startedMs, Date.now());
    if (minutes === 0 || (await record(clockTime(file.row.id, minutes, 'work at the bench')))) stopClock();
  };
  return (
    <button type="button" aria-pressed="true" disabled={busy} onClick={() => void stop()}>
      Stop the clock (<Elapsed sinceMs={clock.startedMs} />)
    </button>
  );
}

function Elapsed({ sinceMs }: { readonly sinceMs: number }) {
  const [nowMs, setNowMs] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNowMs(Date.now()), 10_000);
    return () => clearInterval(timer);
  }, []);
  return <>{duration(Math.floor(clockedMinutes(sinceMs, Math.max(nowMs, sinceMs))))}</>;
}
