import { BenchError } from '../bench-error.ts';
import type { AnyEvent, Stored } from '../events/index.ts';
import type { AppendOutcome, LogStore, RowChanges } from '../ports.ts';
import type { ItemRow } from '../views/index.ts';
import type { SharedStore } from '../ports-shared.ts';

interface Replacement {
  readonly rows: readonly ItemRow[];
  readonly at: { readonly seq: number; readonly version: number };
}

interface Batch {
  readonly events: readonly AnyEvent[];
  readonly changes: RowChanges;
}

/**
 * What a process knows of a shared log, as the store that its bench stands on. It answers from memory; what the bench appends waits in it until
 * `flush` has handed it on, and is taken back by `drop` when that could not be made lasting.
 */
export class Mirror implements LogStore {
  readonly #log: Stored[] = [];
  readonly #places = new Map<string, number>();
  #rowsAt = { seq: 0, version: 0 };
  /** Number of events that the shared store is known to hold. */
  #lasting = 0;
  #batches: Batch[] = [];
  #replacement: Replacement | null = null;

  append(events: readonly AnyEvent[], changes: RowChanges): AppendOutcome[] {
    const fresh: AnyEvent[] = [];
    const outcomes = events.map((event): AppendOutcome => {
      const known = this.#places.get(event.id);
      if (known !== undefined) return { id: event.id, seq: known, duplicate: true };
      fresh.push(event);
      return { id: event.id, seq: this.#push(event), duplicate: false };
    });
    this.#batches.push({ events: fresh, changes });
    this.#rowsAt = { seq: this.#log.length, version: changes.version };
    return outcomes;
  }

  read(afterSeq: number, limit: number): Stored[] {
    return this.#log.slice(afterSeq, afterSeq + limit);
  }

  lastSeq(): number {
    return this.#log.length;
  }

  rowsAt(): { readonly seq: number; readonly version: number } {
    return this.#rowsAt;
  }

  replaceRows(rows: readonly ItemRow[], at: Replacement['at']): void {
    this.#replacement = { rows, at };
    this.#rowsAt = at;
  }

  /** Whoever asks has the shared log for itself already; what fails here leaves nothing to hand on. */
  exclusively<T>(work: () => T): T {
    const [length, batches, rowsAt] = [this.#log.length, this.#batches.length, this.#rowsAt];
    try {
      return work();
    } catch (error) {
      this.#shorten(length);
      this.#batches.length = batches;
      this.#rowsAt = rowsAt;
      throw error;
    }
  }

  /** Reads on from where this process is. Events that are known already, because two readings overlap, are passed over. */
  async readOn(from: SharedStore): Promise<void> {
    const PAGE = 10_000;
    for (;;) {
      const page = await from.read(this.#log.length, PAGE);
      for (const { seq, event } of page) if (seq === this.#log.length + 1) this.#push(event);
      this.#lasting = Math.max(this.#lasting, this.#log.length);
      if (page.length < PAGE) break;
    }
  }

  /** Learns up to where the rows of the lists are made, as the bench asks when it opens. */
  async learnRowsAt(from: SharedStore): Promise<void> {
    this.#rowsAt = await from.rowsAt();
  }

  /** Hands on what waits. It is lasting only when the transaction of `to` is committed: then comes `settle`, else `drop`. */
  async flush(to: SharedStore): Promise<void> {
    const events = this.#batches.flatMap((batch) => batch.events);
    if (this.#replacement) await to.replaceRows(this.#replacement.rows, this.#replacement.at);
    if (events.length === 0) return;
    const appended = await to.append(events, togetherOf(this.#batches));
    if (appended.at(-1)!.seq !== this.#log.length || appended.some(({ duplicate }) => duplicate))
      throw new BenchError(
        'log-out-of-step',
        'the shared store gave events other places than this process did: somebody appended without the lock',
      );
  }

  settle(): void {
    this.#lasting = this.#log.length;
    this.#batches = [];
    this.#replacement = null;
  }

  drop(): void {
    this.#shorten(this.#lasting);
    this.#batches = [];
    this.#replacement = null;
  }

  #push(event: AnyEvent): number {
    this.#log.push({ seq: this.#log.length + 1, event });
    this.#places.set(event.id, this.#log.length);
    return this.#log.length;
  }

  #shorten(length: number): void {
    for (const { event } of this.#log.splice(length)) this.#places.delete(event.id);
  }
}

/** The changes of several batches as those of one: of each item the last word holds. */
function togetherOf(batches: readonly Batch[]): RowChanges {
  const put = new Map<string, ItemRow>();
  const remove = new Set<string>();
  for (const { changes } of batches) {
    for (const id of changes.remove) {
      put.delete(id);
      remove.add(id);
    }
    for (const row of changes.put) {
      put.set(row.id, row);
      remove.delete(row.id);
    }
  }
  return { put: [...put.values()], remove: [...remove], version: batches.at(-1)!.changes.version };
}
