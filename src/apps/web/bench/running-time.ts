import { useSyncExternalStore } from 'react';

/** A time that runs on this device, for one unit at a time. */
export interface Running {
  readonly itemId: string;
  readonly startedMs: number;
}

export interface RunningTime {
  use(): Running | null;
  now(): Running | null;
  set(next: Running | null): void;
}

/** A time kept on this device under a key; it outlives a reload where the device keeps anything. */
export function runningTime(key: string): RunningTime {
  const listeners = new Set<() => void>();
  let running: Running | null | undefined;
  const now = (): Running | null => {
    if (running === undefined) running = read(key);
    return running;
  };
  const subscribe = (listener: () => void): (() => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    use: () => useSyncExternalStore(subscribe, now),
    now,
    set: (next) => {
      running = next;
      keep(key, next);
      for (const listener of listeners) listener();
    },
  };
}

function keep(key: string, value: Running | null): void {
  try {
    if (value === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // Storage is closed: the time runs until the page is left.
  }
}

function read(key: string): Running | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return isRunning(value) ? value : null;
  } catch {
    return null;
  }
}

const isRunning = (value: unknown): value is Running =>
  typeof value === 'object' &&
  value !== null &&
  'itemId' in value &&
  typeof value.itemId === 'string' &&
  'startedMs' in value &&
  typeof value.startedMs === 'number';
