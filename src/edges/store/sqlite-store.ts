import Connection, { type Database, type Statement } from 'better-sqlite3';
import { EVENT_VERSION, KINDS, parseEvent, type AnyEvent, type Stored } from '../../bench/events/index.ts';
import type { AppendOutcome, EventStore, ItemPage, ItemQuery, RowChanges } from '../../bench/ports.ts';
import type { ItemRow } from '../../bench/views/index.ts';
import { pageStatement } from './item-query.ts';
import { wordsOf } from './item-words.ts';
import { migrate } from './migrations.ts';
import { asStoreError } from './store-error.ts';

/** How long a write waits for another process that is writing, ms. */
const BUSY_MS = 10_000;

/**
 * The store of one bench in one file: written ahead, fully synchronised, so that what `append` has answered survives a power cut. Several processes may
 * have it open. Throws StoreError.
 */
export function openSqliteStore(file: string): EventStore {
  return asStoreError(file, () => {
    const database = new Connection(file);
    try {
      database.pragma(`busy_timeout = ${BUSY_MS}`);
      database.pragma('journal_mode = WAL');
      database.pragma('synchronous = FULL');
      migrate(database, file);
      return new SqliteStore(database, file);
    } catch (error) {
      database.close();
      throw error;
    }
  });
}

interface EventColumns {
  seq: number;
  id: string;
  at: string;
  device: string;
  version: number;
  kind: string;
  body: string;
}

class SqliteStore implements EventStore {
  private readonly statements = new Map<string, Statement>();

  constructor(
    private readonly database: Database,
    private readonly file: string,
  ) {}

  append(events: readonly AnyEvent[], rows: RowChanges): AppendOutcome[] {
    return this.exclusively(() => {
      const outcomes = events.map((event) => this.appendOne(event));
      for (const id of rows.remove) this.removeRow(id);
      for (const row of inOrder(rows.put)) this.putRow(row);
      this.setRowsAt(this.lastSeq(), rows.version);
      return outcomes;
    });
  }

  private appendOne(event: AnyEvent): AppendOutcome {
    const known = this.run('SELECT seq FROM event WHERE id = ?').get(event.id) as { seq: number } | undefined;
    if (known) return { id: event.id, seq: known.seq, duplicate: true };
    const { id, at, device, version, kind, body } = event;
    const { lastInsertRowid } = this.run('INSERT INTO event (id, at, device, version, kind, body) VALUES (?, ?, ?, ?, ?, ?)').run(
      id,
      at,
      device,
      version,
      kind,
      JSON.stringify(body) ?? 'null',
    );
    return { id, seq: Number(lastInsertRowid), duplicate: false };
  }

  read(afterSeq: number, limit: number): Stored[] {
    const found = this.guarded(() =>
      this.run('SELECT * FROM event WHERE seq > ? ORDER BY seq LIMIT ?').all(afterSeq, limit),
    ) as EventColumns[];
    return found.map(({ seq, ...columns }) => ({ seq, event: eventOf(columns) }));
  }

  lastSeq(): number {
    return this.guarded(() => (this.run('SELECT coalesce(max(seq), 0) AS seq FROM event').get() as { seq: number }).seq);
  }

  has(ids: readonly string[]): ReadonlySet<string> {
    const statement = this.run('SELECT 1 FROM event WHERE id = ?');
    return new Set(ids.filter((id) => statement.get(id) !== undefined));
  }

  items(query: ItemQuery): ItemPage {
    const after = query.after === undefined ? undefined : Number(query.after);
    const statuses = query.status ?? [undefined];
    const found = this.guarded(() => statuses.flatMap((status) => this.page(query, status, after)));
    const sorted = statuses.length > 1 ? found.sort((a, b) => b.rank - a.rank) : found;
    const page = sorted.slice(0, query.limit);
    const next = sorted.length > query.limit ? String(page.at(-1)!.rank) : null;
    return { rows: page.map(({ row }) => JSON.parse(row) as ItemRow), next };
  }

  private page(query: ItemQuery, status: string | undefined, after: number | undefined): { rank: number; row: string }[] {
    const { sql, parameters } = pageStatement(query, status, after, query.limit + 1);
    return this.run(sql).all(...parameters) as { rank: number; row: string }[];
  }

  countByStatus(): Readonly<Record<string, number>> {
    const rows = this.guarded(() => this.run('SELECT status, count FROM status_count WHERE count > 0').all()) as {
      status: string;
      count: number;
    }[];
    return Object.fromEntries(rows.map(({ status, count }) => [status, count]));
  }

  rowsAt(): { readonly seq: number; readonly version: number } {
    return this.guarded(() => this.run('SELECT seq, version FROM rows_at').get()) as { seq: number; version: number };
  }

  replaceRows(rows: readonly ItemRow[], at: { readonly seq: number; readonly version: number }): void {
    this.exclusively(() => {
      this.database.exec(`DELETE FROM item_row; INSERT INTO item_words (item_words) VALUES ('delete-all')`);
      for (const row of inOrder(rows)) this.insertRow(row);
      this.setRowsAt(at.seq, at.version);
    });
  }

  exclusively<T>(work: () => T): T {
    return this.guarded(() => (this.database.inTransaction ? work() : this.database.transaction(work).immediate()));
  }

  close(): void {
    this.database.close();
  }

  private putRow(row: ItemRow): void {
    this.removeRow(row.id);
    this.insertRow(row);
  }

  private removeRow(id: string): void {
    const known = this.run('SELECT rank FROM item_row WHERE id = ?').get(id) as { rank: number } | undefined;
    if (!known) return;
    this.run('DELETE FROM item_words WHERE rowid = ?').run(known.rank);
    this.run('DELETE FROM item_row WHERE rank = ?').run(known.rank);
  }

  private insertRow(row: ItemRow): void {
    const { lastInsertRowid } = this.run('INSERT INTO item_row (id, status, kind, place, model_id, row) VALUES (?, ?, ?, ?, ?, ?)').run(
      row.id,
      row.status,
      row.kind,
      row.place,
      row.model_id,
      JSON.stringify(row),
    );
    this.run('INSERT INTO item_words (rowid, words) VALUES (?, ?)').run(lastInsertRowid, wordsOf(row));
  }

  private setRowsAt(seq: number, version: number): void {
    this.run('UPDATE rows_at SET seq = ?, version = ?').run(seq, version);
  }

  /** A statement is prepared once; the questions of lists come in a few dozen shapes. */
  private run(sql: string): Statement {
    let statement = this.statements.get(sql);
    if (!statement) {
      statement = this.database.prepare(sql);
      this.statements.set(sql, statement);
    }
    return statement;
  }

  private guarded<T>(work: () => T): T {
    return asStoreError(this.file, work);
  }
}

/** Oldest change first, and within one event the later id first, so that the newest row to be asked for is the last one written. */
const inOrder = (rows: readonly ItemRow[]): ItemRow[] => [...rows].sort((a, b) => a.changed_seq - b.changed_seq || (a.id < b.id ? 1 : -1));

const KNOWN: ReadonlySet<string> = new Set(KINDS);

/**
 * The event in its columns. What this version wrote was checked when it came in; what another version wrote is checked again, so that fields added
 * since have their defaults, and what was not understood then may be now.
 */
function eventOf({ body, ...envelope }: Omit<EventColumns, 'seq'>): AnyEvent {
  const value = { ...envelope, body: JSON.parse(body) as unknown };
  if (envelope.version === EVENT_VERSION && KNOWN.has(envelope.kind)) return value as AnyEvent;
  const parsed = parseEvent(value);
  return parsed.ok ? parsed.event : { ...value, foreign: true };
}
