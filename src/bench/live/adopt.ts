import type { RecordResult } from '../bench.ts';
import type { AnyEvent, Stored } from '../events/index.ts';
import { catchUp, whileAlone, type LiveLog } from './live-log.ts';
import type { LogStore } from '../ports.ts';
import { foldLog } from '../fold/index.ts';
import { rowChanges } from './record.ts';

/** A log from elsewhere, in its order and with its ids, into a bench that has none. An id that comes twice is taken once. */
export function adopt(live: LiveLog, store: LogStore, events: readonly AnyEvent[]): RecordResult {
  return whileAlone(live, store, () => {
    if (live.log.length > 0) {
      const message = `this bench holds ${live.log.length} events already, and a whole log goes only into an empty one`;
      return { ok: false, code: 'bench-not-empty', index: 0, field: 'events', message };
    }
    const fresh = [...new Map(events.map((event) => [event.id, event])).values()];
    const log: Stored[] = fresh.map((event, index) => ({ seq: index + 1, event }));
    const state = foldLog(log, live.shelf);
    const outcomes = store.append(fresh, rowChanges(state, state.items.keys()));
    catchUp(live, store);
    return { ok: true, stored: outcomes };
  });
}
