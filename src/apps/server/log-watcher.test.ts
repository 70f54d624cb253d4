import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { watchLog } from './log-watcher.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function watched(): { told: number[]; grow: (by?: number) => void; watcher: ReturnType<typeof watchLog>; looks: () => number } {
  let seq = 5;
  let looks = 0;
  const told: number[] = [];
  const watcher = watchLog(() => {
    looks += 1;
    return seq;
  });
  return { told, grow: (by = 1) => void (seq += by), watcher, looks: () => looks };
}

describe('the watcher of the log', () => {
  it('tells the last place at once, and again only when the log has grown', () => {
    const { told, grow, watcher } = watched();
    watcher.watch((seq) => told.push(seq));
    vi.advanceTimersByTime(3000);
    expect(told).toEqual([5]);
    grow(2);
    vi.advanceTimersByTime(1000);
    expect(told).toEqual([5, 7]);
  });

  it('tells all who watch without waiting for the second when it is asked to look', () => {
    const { told, grow, watcher } = watched();
    watcher.watch((seq) => told.push(seq));
    watcher.watch((seq) => told.push(-seq));
    told.length = 0;
    grow();
    watcher.look();
    expect(told).toEqual([6, -6]);
  });

  it('does not look while nobody watches', () => {
    const { watcher, looks } = watched();
    watcher.watch(() => undefined)();
    const before = looks();
    watcher.look();
    vi.advanceTimersByTime(10_000);
    expect(looks()).toBe(before);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('ends all watching when it is closed', () => {
    const { told, grow, watcher } = watched();
    let isClosed = false;
    watcher.watch((seq) => told.push(seq));
    watcher.onClose(() => void (isClosed = true));
    watcher.close();
    grow();
    vi.advanceTimersByTime(5000);
    expect([told, isClosed, vi.getTimerCount()]).toEqual([[5], true, 0]);
  });
});
