import type { Bench, BenchDoor, BenchParts, BenchViews } from '../bench.ts';
import { benchOver } from '../open-bench.ts';
import type { SharedStore } from '../ports-shared.ts';
import { findItem } from '../show/item-file.ts';
import { itemHistory } from './item-history.ts';
import { Mirror } from './mirror.ts';
import { takeTurns, type Work, type Worked } from './take-turns.ts';

/** A bench whose log other processes share, in this process. */
export interface SharedBench {
  readonly bench: BenchViews;
  readonly door: BenchDoor;
  /** Lets go of the log when what is under way is done; the store itself stays open. */
  close(): Promise<void>;
}

/**
 * The bench over a store that other processes share. Each process folds the log in its own memory and reads on when another one has appended.
 * Whoever writes holds off the others, reads on, judges the events by the state that all of them have, and hands them on; an answer is given
 * only after the commit. Batches that wait go in one transaction. When it fails, memory goes back to what the store is known to hold.
 */
export async function openSharedBench({
  shared,
  ...parts
}: Omit<BenchParts, 'store'> & { readonly shared: SharedStore }): Promise<SharedBench> {
  const mirror = new Mirror();
  await mirror.readOn(shared);
  const bench = await shared.exclusively(async (alone) => {
    await mirror.readOn(alone);
    await mirror.learnRowsAt(alone);
    const opened = benchOver({ ...parts, store: mirror });
    await mirror.flush(alone);
    return opened;
  });
  mirror.settle();
  const turns = takeTurns({ read: () => mirror.readOn(shared), write: (works) => writeAll(shared, mirror, bench, works) });
  const unwatch = shared.watch(() => void turns.fresh().catch(() => undefined));
  return {
    bench,
    door: {
      fresh: turns.fresh,
      quiet: turns.settled,
      record: (events) => turns.write(() => bench.record(events)),
      adopt: (events) => turns.write(() => bench.adopt(events)),
      items: (query) => shared.items(query),
      history: async (name) => itemHistory(await shared.about(findItem(bench.state(), name)?.id ?? name), parts.models),
    },
    close: () => {
      unwatch();
      return turns.settled();
    },
  };
}

/** Does all works in one transaction, each whole or not at all, and gives what came of each. Rejects when none of it is lasting. */
async function writeAll(shared: SharedStore, mirror: Mirror, bench: Pick<Bench, 'state'>, works: readonly Work[]): Promise<Worked[]> {
  try {
    const worked = await shared.exclusively(async (alone) => {
      await mirror.readOn(alone);
      const results = works.map(attempt);
      await mirror.flush(alone);
      return results;
    });
    mirror.settle();
    return worked;
  } catch (error) {
    mirror.drop();
    bench.state();
    throw error;
  }
}

function attempt(work: Work): Worked {
  try {
    return { result: work() };
  } catch (error) {
    return { error };
  }
}
