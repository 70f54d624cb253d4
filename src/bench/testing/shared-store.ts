import { ABOUT_ALL, type SharedStore } from '../ports-shared.ts';
import { subjectsKept } from '../shared/index.ts';
import { memoryStore } from './memory-store.ts';

/** A `SharedStore` in memory, for tests of what stands on one: each stretch of work waits for the one before, and is undone when it fails. */
export function sharedMemoryStore(): SharedStore & { failCommits(count: number): void; readonly commits: () => number } {
  let store = memoryStore();
  let turn: Promise<unknown> = Promise.resolve();
  let [toFail, commits] = [0, 0];
  const watchers = new Set<() => void>();

  const within = (): SharedStore => ({
    append: async (events, rows) => store.append(events, rows),
    read: async (after, limit) => store.read(after, limit),
    lastSeq: async () => store.lastSeq(),
    has: async (ids) => store.has(ids),
    items: async (query) => store.items(query),
    countByStatus: async () => store.countByStatus(),
    rowsAt: async () => store.rowsAt(),
    replaceRows: async (rows, at) => store.replaceRows(rows, at),
    about: async (itemId) => ({
      rows: store.items({ limit: 1e9 }).rows,
      row: store.items({ limit: 1e9 }).rows.find(({ id }) => id === itemId) ?? null,
      events: store.read(0, 1e9).filter(({ event }) => subjectsKept(event).some((id) => id === itemId || id === ABOUT_ALL)),
    }),
    exclusively: (work) => work(within()),
    watch: () => () => undefined,
    close: async () => undefined,
  });
  const commit = async <T>(work: (alone: SharedStore) => Promise<T>): Promise<T> => {
    const before = { events: store.read(0, 1e9), rows: store.items({ limit: 1e9 }).rows, at: store.rowsAt() };
    try {
      const result = await work(within());
      if (toFail-- > 0) throw new Error('the connection broke');
      commits++;
      for (const tell of watchers) tell();
      return result;
    } catch (error) {
      store = memoryStore();
      store.append(
        before.events.map(({ event }) => event),
        { put: [], remove: [], version: 0 },
      );
      store.replaceRows(before.rows, before.at);
      throw error;
    }
  };
  return {
    ...within(),
    append: (events, rows) => commit((alone) => alone.append(events, rows)),
    exclusively(work) {
      const mine = turn.then(() => commit(work));
      turn = mine.catch(() => undefined);
      return mine;
    },
    watch(tell) {
      watchers.add(tell);
      return () => void watchers.delete(tell);
    },
    failCommits: (count) => void (toFail = count),
    commits: () => commits,
  };
}
