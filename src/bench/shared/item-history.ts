import { isForeign, type AnyEvent, type Stored } from '../events/index.ts';
import { foldLog, newItem } from '../fold/index.ts';
import { subjectsOf } from '../live/subjects-of.ts';
import { logLine } from '../log-line.ts';
import type { Model } from '../models/index.ts';
import { ABOUT_ALL, type OneItem } from '../ports-shared.ts';
import type { ItemHistory } from '../views/index.ts';

/** What an event is about, as a shared store keeps it: its items, or all of them where it sets how the bench counts. */
export const subjectsKept = (event: AnyEvent): readonly string[] =>
  !isForeign(event) && event.kind === 'bench-set' ? [ABOUT_ALL] : subjectsOf(event, () => undefined);

/**
 * The row and the log of one item, from the events about it and the rows of the items that they name, so that it costs the same however long the
 * log is. Null when there is no such item. Advice, and names of bags and listings, only the whole bench knows: those stand there by their ids.
 */
export function itemHistory({ row, events, rows }: OneItem, models: ReadonlyMap<string, Model>): ItemHistory | null {
  if (row === null) return null;
  const state = foldLog([...events], models);
  for (const { id, number, name, kind, model_id: modelId, status } of rows) {
    const known = state.items.get(id) ?? newItem({ id, number, name, kind, modelId, lotId: null, slot: '', status, demo: false });
    state.items.set(id, { ...known, number, name, modelId });
  }
  const isAbout = ({ event }: Stored): boolean => isForeign(event) || event.kind !== 'bench-set';
  return { row, log: events.filter(isAbout).map((stored) => logLine(stored, state, models)) };
}
