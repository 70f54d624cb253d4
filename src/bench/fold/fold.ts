import type { EventOf, Kind } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';

/** What the folding of one event works on. */
export interface Fold {
  readonly state: BenchState;
  /** Models of the folders. */
  readonly shelf: ReadonlyMap<string, Model>;
  /** The same, and those that have grown by now. */
  readonly models: ReadonlyMap<string, Model>;
  readonly seq: number;
  /** Ids of the items that changed; the caller makes their rows anew. */
  readonly touched: Set<string>;
}

/** What an event would have needed and is not there; the event is kept as an orphan. */
export interface Missing {
  readonly what: string;
  readonly id: string;
}

/** Folds one event into the state, or leaves the state alone and says what is missing. */
export type Apply<K extends Kind> = (fold: Fold, event: EventOf<K>) => Missing | null;

export const missing = (what: string, id: string): Missing => ({ what, id });

/** The item changed at this event. */
export function touch(fold: Fold, item: Item, at: string): void {
  item.changedSeq = fold.seq;
  item.changedAt = at;
  fold.touched.add(item.id);
}

/** Runs `change` on a known item and marks it as changed; else says which item is missing. */
export function onItem(
  fold: Fold,
  event: { readonly at: string; readonly body: { readonly item_id: string } },
  change: (item: Item) => Missing | null | void,
): Missing | null {
  const item = fold.state.items.get(event.body.item_id);
  if (!item) return missing('item', event.body.item_id);
  const lack = change(item) ?? null;
  if (!lack) touch(fold, item, event.at);
  return lack;
}
