import type { Bench, BenchDoor } from '../bench.ts';

/** The door of a bench that stands on its own store, which answers at once. */
export const ownDoor = (bench: Bench): BenchDoor => ({
  fresh: async () => undefined,
  quiet: async () => undefined,
  record: async (events) => bench.record(events),
  adopt: async (events) => bench.adopt(events),
  items: async (query) => bench.items(query),
  history: async (name) => bench.history(name),
});
