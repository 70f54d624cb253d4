import type { AnyEvent, Stored } from '../events/index.ts';
import type { AppendOutcome, EventStore, ItemPage, ItemQuery, RowChanges } from '../ports.ts';
import type { ItemRow } from '../views/index.ts';

/** An `EventStore` in memory, for tests of the bench. Nothing outlives it; several benches may share one. */
export function memoryStore(): EventStore {
  const log: Stored[] = [];
  const seqs = new Map<string, number>();
  const rows = new Map<string, ItemRow>();
  let rowsAt = { seq: 0, version: 0 };

  const appendOne = (event: AnyEvent): AppendOutcome => {
    const known = seqs.get(event.id);
    if (known !== undefined) return { id: event.id, seq: known, duplicate: true };
    const seq = log.length + 1;
    log.push({ seq, event: JSON.parse(JSON.stringify(event)) as AnyEvent });
    seqs.set(event.id, seq);
    return { id: event.id, seq, duplicate: false };
  };

  const append = (events: readonly AnyEvent[], changes: RowChanges): AppendOutcome[] => {
    const outcomes = events.map(appendOne);
    for (const id of changes.remove) rows.delete(id);
    for (const row of changes.put) rows.set(row.id, row);
    rowsAt = { seq: log.length, version: changes.version };
    return outcomes;
  };

  return {
    append,
    read: (afterSeq, limit) => log.slice(afterSeq, afterSeq + limit),
    lastSeq: () => log.length,
    has: (ids) => new Set(ids.filter((id) => seqs.has(id))),
    items: (query) => pageOf([...rows.values()], query),
    countByStatus: () => {
      const counts: Record<string, number> = {};
      for (const row of rows.values()) counts[row.status] = (counts[row.status] ?? 0) + 1;
      return counts;
    },
    rowsAt: () => rowsAt,
    replaceRows: (all, at) => {
      rows.clear();
      for (const row of all) rows.set(row.id, row);
      rowsAt = at;
    },
    exclusively(work) {
      const before = { length: log.length, rows: [...rows], rowsAt };
      try {
        return work();
      } catch (error) {
        for (const { event } of log.splice(before.length)) seqs.delete(event.id);
        rows.clear();
        for (const [id, row] of before.rows) rows.set(id, row);
        rowsAt = before.rowsAt;
        throw error;
      }
    },
    close: () => {},
  };
}

function pageOf(rows: readonly ItemRow[], query: ItemQuery): ItemPage {
  const found = rows.filter((row) => matches(row, query)).sort((a, b) => b.changed_seq - a.changed_seq || (a.id < b.id ? -1 : 1));
  const start = query.after === undefined ? 0 : found.findIndex((row) => row.id === query.after) + 1;
  const page = found.slice(start, start + query.limit);
  return { rows: page, next: start + query.limit < found.length ? page.at(-1)!.id : null };
}

function matches(row: ItemRow, query: ItemQuery): boolean {
  if (query.status && !query.status.includes(row.status)) return false;
  if (query.kind !== undefined && row.kind !== query.kind) return false;
  if (query.place !== undefined && row.place !== query.place) return false;
  if (query.model !== undefined && row.model_id !== query.model) return false;
  const words = `${row.name} ${row.number} ${row.model_id} ${row.lot_title} ${row.seller}`.toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const wanted = (query.search ?? '').toLowerCase().split(/[^\p{L}\p{N}]+/u);
  return wanted.every((word) => words.some((candidate) => candidate.startsWith(word)));
}
