import { useSyncExternalStore } from 'react';

const KEY = 'salvor.clock';

interface Running {
  readonly itemId: string;
  readonly startedMs: number;
}

const listeners = new Set<() => void>();
let running: Running | null | undefined;

/** The clock that runs on this device, for one unit at a time; it outlives a reload. */
export function useClock(): Running | null {
  return useSyncExternalStore(subscribe, current);
}

export function startClock(itemId: string): void {
  set({ itemId, startedMs: Date.now() });
}

export function stopClock(): void {
  set(null);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function current(): Running | null {
  if (running === undefined) running = read();
  return running;
}

function set(next: Running | null): void {
  running = next;
  try {
    if (next === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify(next));
  } catch {
    // Storage is closed: the clock runs until the page is left.
  }
  for (const listener of listeners) listener();
}

function read(): Running | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
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
