import type { Database } from 'better-sqlite3';
import type { EventStore } from '../../bench/ports.ts';
import { eventLogOn } from './event-log.ts';
import { itemListOn } from './item-list.ts';
import { itemRowsOn } from './item-rows.ts';
import { openDatabase } from './open-database.ts';
import { queriesOn } from './queries.ts';
import { guarded } from './store-error.ts';

/**
 * The log and its lists in one SQLite file, made if it is not there. Several processes may have it open: one writes at a time, and the
 * others wait up to ten seconds. Opening throws `StoreError` for a file that cannot serve, and so does every call when the disk fails it.
 */
export function openSqliteStore(file: string): EventStore {
  const database = openDatabase(file);
  try {
    return guarded(file, () => storeOn(database, file));
  } catch (error) {
    database.close();
    throw error;
  }
}

function storeOn(database: Database, file: string): EventStore {
  const queries = queriesOn(database);
  const log = eventLogOn(queries);
  const rows = itemRowsOn(queries);
  const list = itemListOn(queries);
  /** Inside another one it becomes a part of that one. */
  const writing = <T>(work: () => T): T => guarded(file, () => database.transaction(work).immediate());
  return {
    append: (events, changes) =>
      writing(() => {
        const outcomes = log.append(events);
        rows.change(changes);
        rows.setMadeFrom({ seq: log.lastSeq(), version: changes.version });
        return outcomes;
      }),
    read: (afterSeq, limit) => guarded(file, () => log.read(afterSeq, limit)),
    lastSeq: () => guarded(file, log.lastSeq),
    has: (ids) => guarded(file, () => log.has(ids)),
    items: (query) => guarded(file, () => list.page(query)),
    countByStatus: () => guarded(file, list.countByStatus),
    rowsAt: () => guarded(file, rows.madeFrom),
    replaceRows: (all, at) =>
      writing(() => {
        rows.replaceAll(all);
        rows.setMadeFrom(at);
      }),
    exclusively: writing,
    close: () => database.close(),
  };
}
