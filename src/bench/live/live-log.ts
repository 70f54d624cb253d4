import type { AnyEvent, Stored } from '../events/index.ts';
import { applyEvent, emptyState, foldLog, isRefolding } from '../fold/index.ts';
import { modelsWithGrown } from '../grow/models-with-grown.ts';
import type { Model } from '../models/index.ts';
import type { LogStore } from '../ports.ts';
import { rowOf } from '../row-of.ts';
import type { BenchState } from '../state.ts';
import type { ItemRow } from '../views/index.ts';
import { subjectsOf } from './subjects-of.ts';

/** The log and the state that it makes, kept in memory and in step with each other. */
export interface LiveLog {
  /** Models of the folders: a log is folded with these, for the grown ones come from the log. */
  readonly shelf: ReadonlyMap<string, Model>;
  /** The same with the grown ones of the present state. */
  readonly models: ReadonlyMap<string, Model>;
  readonly log: Stored[];
  readonly byId: Map<string, Stored>;
  /** The events about each item, in order. */
  readonly byItem: Map<string, Stored[]>;
  state: BenchState;
}

const PAGE = 10_000;

export function emptyLive(shelf: ReadonlyMap<string, Model>): LiveLog {
  const live: LiveLog = {
    shelf,
    models: modelsWithGrown(shelf, () => live.state),
    log: [],
    byId: new Map(),
    byItem: new Map(),
    state: emptyState(),
  };
  return live;
}

/**
 * Takes in what the store holds past the state: event by event, or the whole log at once where that is the shorter way. What the store does not
 * hold after all, because it could not be made lasting, is taken back first.
 */
export function catchUp(live: LiveLog, store: LogStore): void {
  const lastSeq = store.lastSeq();
  if (lastSeq === live.state.seq) return;
  if (lastSeq < live.log.length) takeBack(live, live.log.length - lastSeq);
  const fresh: Stored[] = [];
  for (let page = store.read(live.state.seq, PAGE); page.length > 0; page = store.read(page.at(-1)!.seq, PAGE)) fresh.push(...page);
  if (live.log.length === 0 || fresh.some(({ event }) => isRefolding(event.kind))) {
    for (const stored of fresh) index(live, stored);
    live.state = foldLog(live.log, live.shelf);
  } else {
    for (const stored of fresh) push(live, stored, new Set());
  }
}

/**
 * Catches up and runs `work` while no other process can append. When the store fails, even as late as in making all of it lasting, the memory is as
 * it was before `work`, and the error goes on.
 */
export function whileAlone<T>(live: LiveLog, store: LogStore, work: () => T): T {
  let length = live.log.length;
  try {
    return store.exclusively(() => {
      catchUp(live, store);
      length = live.log.length;
      return work();
    });
  } catch (error) {
    takeBack(live, live.log.length - length);
    throw error;
  }
}

/** Adds one event to the log and the state; adds to `touched` the ids of the items whose rows change. */
export function push(live: LiveLog, stored: Stored, touched: Set<string>): void {
  index(live, stored);
  if (applyEvent(live.state, stored, live.shelf, touched) === 'applied') return;
  const before = live.state;
  live.state = foldLog(live.log, live.shelf);
  for (const id of changedRows(before, live.state)) touched.add(id);
}

/** Takes the last `count` events off again: the state is as if they had never come. */
export function takeBack(live: LiveLog, count: number): void {
  if (count === 0) return;
  for (const { event } of live.log.splice(live.log.length - count).toReversed()) {
    for (const id of subjectsOf(event, (other) => live.byId.get(other)?.event)) live.byItem.get(id)?.pop();
    live.byId.delete(event.id);
  }
  live.state = foldLog(live.log, live.shelf);
}

export const eventById = (live: LiveLog, id: string): AnyEvent | undefined => live.byId.get(id)?.event;

function index(live: LiveLog, stored: Stored): void {
  live.log.push(stored);
  live.byId.set(stored.event.id, stored);
  for (const id of subjectsOf(stored.event, (other) => eventById(live, other))) {
    const about = live.byItem.get(id);
    if (about) about.push(stored);
    else live.byItem.set(id, [stored]);
  }
}

/** Items whose row differs between two states, or that are in one only. */
function changedRows(before: BenchState, after: BenchState): string[] {
  const ids = new Set([...before.items.keys(), ...after.items.keys()]);
  return [...ids].filter((id) => {
    const [was, is] = [before.items.get(id), after.items.get(id)];
    return !was || !is || differ(rowOf(before, was), rowOf(after, is));
  });
}

const differ = (a: ItemRow, b: ItemRow): boolean => (Object.keys(a) as (keyof ItemRow)[]).some((key) => a[key] !== b[key]);
