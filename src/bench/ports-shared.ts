import type { AnyEvent, Stored } from './events/index.ts';
import type { AppendOutcome, ItemPage, ItemQuery, RowChanges } from './ports.ts';
import type { ItemRow } from './views/index.ts';

/** The subject of events that are about every item; no item can be called so. */
export const ABOUT_ALL = '*';

export interface OneItem {
  /** Null when there is no such item. */
  readonly row: ItemRow | null;
  readonly events: readonly Stored[];
  /** Rows of all items that these events are about, itself too. */
  readonly rows: readonly ItemRow[];
}

/**
 * The log and the lists made from it, shared by several processes that may be far from it: what `EventStore` promises, each answer later. An
 * append resolves only when its events and rows are committed, all of them or none. Places in the log are given out under a lock that all
 * processes share and that is held until the commit, so whoever reads on from the last place never skips one.
 */
export interface SharedStore {
  append(events: readonly AnyEvent[], rows: RowChanges): Promise<AppendOutcome[]>;
  /** Events after `seq`, in order, at most `limit`. */
  read(afterSeq: number, limit: number): Promise<Stored[]>;
  lastSeq(): Promise<number>;
  has(ids: readonly string[]): Promise<ReadonlySet<string>>;
  items(query: ItemQuery): Promise<ItemPage>;
  /** Number of items in each status. */
  countByStatus(): Promise<Readonly<Record<string, number>>>;
  /** The seq up to which the rows are made, and the version that made them. */
  rowsAt(): Promise<{ readonly seq: number; readonly version: number }>;
  replaceRows(rows: readonly ItemRow[], at: { readonly seq: number; readonly version: number }): Promise<void>;
  /** One item and the events about it, in order, corrections of them too, found without reading any others. */
  about(itemId: string): Promise<OneItem>;
  /** Runs `work` in one transaction, on a store of its own, while no other process can append; what it throws undoes all of it. */
  exclusively<T>(work: (alone: SharedStore) => Promise<T>): Promise<T>;
  /** Calls `tell` soon after any process has appended; returns what ends that. Between two calls any number of events may have come. */
  watch(tell: () => void): () => void;
  close(): Promise<void>;
}
