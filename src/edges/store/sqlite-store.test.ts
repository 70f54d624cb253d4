import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Connection from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ForeignEvent } from '../../bench/events/index.ts';
import { memoryStore } from '../../bench/testing/memory-store.ts';
import { openDatabase } from './open-database.ts';
import { openSqliteStore } from './sqlite-store.ts';
import { itemRow, noteEvent, storeContract } from './store.contract.ts';

let dir: string;
let count = 0;
const newFile = (): string => join(dir, `store-${++count}.sqlite`);

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-store-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

storeContract('SQLite', () => openSqliteStore(newFile()));
storeContract('the store in memory', memoryStore);

const failure = (work: () => unknown): unknown => {
  try {
    work();
  } catch (error) {
    return error;
  }
  return undefined;
};

describe('a store in a file', () => {
  it('is there again after it was closed', () => {
    const file = newFile();
    const first = openSqliteStore(file);
    first.append([noteEvent(1)], { put: [itemRow(1)], remove: [], version: 1 });
    first.close();
    const again = openSqliteStore(file);
    expect([again.lastSeq(), again.items({ limit: 5 }).rows, again.rowsAt()]).toEqual([1, [itemRow(1)], { seq: 1, version: 1 }]);
    again.close();
  });

  it('is shared by two that have it open', () => {
    const file = newFile();
    const [one, two] = [openSqliteStore(file), openSqliteStore(file)];
    one.append([noteEvent(1)], { put: [], remove: [], version: 1 });
    two.append([noteEvent(2)], { put: [], remove: [], version: 1 });
    expect(one.read(0, 9).map(({ event }) => event.id)).toEqual([noteEvent(1).id, noteEvent(2).id]);
    one.close();
    two.close();
  });

  it('keeps nothing of a stretch of work that failed in the middle', () => {
    const store = openSqliteStore(newFile());
    const work = (): never => {
      store.append([noteEvent(1)], { put: [itemRow(1)], remove: [], version: 1 });
      throw new Error('the plug is pulled');
    };
    expect(() => store.exclusively(work)).toThrow('the plug is pulled');
    expect([store.lastSeq(), store.items({ limit: 5 }).rows, store.countByStatus()]).toEqual([0, [], {}]);
    store.close();
  });

  it('writes ahead and waits for the disk', () => {
    const database = openDatabase(newFile());
    const FULL = 2;
    expect([database.pragma('journal_mode', { simple: true }), database.pragma('synchronous', { simple: true })]).toEqual(['wal', FULL]);
    database.close();
  });

  it('refuses to edit or delete an event, whoever asks', () => {
    const file = newFile();
    const store = openSqliteStore(file);
    store.append([noteEvent(1)], { put: [], remove: [], version: 1 });
    const database = new Connection(file);
    expect(() => database.exec("UPDATE event SET body = '{}'")).toThrow('the log is never edited');
    expect(() => database.exec('DELETE FROM event')).toThrow('the log is never edited');
    database.close();
    store.close();
  });

  it('checks anew what another version wrote: understood now, or kept as foreign with its fields in their order', () => {
    const file = newFile();
    openSqliteStore(file).close();
    const database = new Connection(file);
    const insert = database.prepare(
      "INSERT INTO event (id, at, device, version, kind, checked_version, body) VALUES (?, '2026-05-01T09:00:00Z', 'desk', ?, ?, ?, ?)",
    );
    insert.run(noteEvent(1).id, 1, 'item-received', 0, '{"item_id":"unit-1"}');
    insert.run(noteEvent(2).id, 99, 'note-written', 99, '{"z":1,"text":"from tomorrow","a":[1e3,null]}');
    insert.run(noteEvent(3).id, 1, 'note-written', 0, '{"text":7}');
    database.close();
    const store = openSqliteStore(file);
    const [received, later, odd] = store.read(0, 9).map(({ event }) => event);
    expect(received).toMatchObject({ kind: 'item-received', body: { item_id: 'unit-1', condition: '' } });
    expect(received).not.toHaveProperty('foreign');
    expect([later, odd].map((event) => (event as ForeignEvent).foreign)).toEqual([true, true]);
    expect(JSON.stringify(later!.body)).toBe('{"z":1,"text":"from tomorrow","a":[1000,null]}');
    store.close();
  });
});

describe('a file that cannot serve', () => {
  it('was written by a later Salvor: said with both schemas, and left as it is', () => {
    const file = newFile();
    const database = new Connection(file);
    database.pragma('user_version = 1000');
    database.close();
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-too-new', file, schema: { found: 1000, known: 1 } });
    const after = new Connection(file);
    expect([after.pragma('user_version', { simple: true }), after.pragma('journal_mode', { simple: true })]).toEqual([1000, 'delete']);
    after.close();
  });

  it('is no database', () => {
    const file = newFile();
    writeFileSync(file, 'this is a shopping list, and a long one at that. '.repeat(100));
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-not-a-database', file });
  });

  it('is a database of another program', () => {
    const file = newFile();
    const database = new Connection(file);
    database.exec('CREATE TABLE recipe (name TEXT)');
    database.close();
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-of-another-program', file });
  });

  it('is damaged inside', () => {
    const file = newFile();
    const store = openSqliteStore(file);
    store.append(
      Array.from({ length: 400 }, (_, n) => noteEvent(n)),
      { put: [], remove: [], version: 1 },
    );
    store.close();
    const bytes = readFileSync(file);
    writeFileSync(file, bytes.fill(0xff, 4096));
    const read = (): unknown => openSqliteStore(file).read(0, 1000);
    expect(failure(read)).toMatchObject({ code: 'store-corrupt', file });
  });

  it('would lie in a folder that is not there', () => {
    const file = join(dir, 'no', 'such', 'folder.sqlite');
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-cannot-open', file });
  });

  it('lies in a folder that may not be written', () => {
    const folder = mkdtempSync(join(dir, 'locked-'));
    chmodSync(folder, 0o555);
    const file = join(folder, 'store.sqlite');
    expect(failure(() => asPlainUser(() => openSqliteStore(file)))).toMatchObject({ code: 'store-cannot-open', file });
  });

  it('may not be written itself', () => {
    const file = newFile();
    openSqliteStore(file).close();
    chmodSync(file, 0o444);
    const append = (): unknown => openSqliteStore(file).append([noteEvent(1)], { put: [], remove: [], version: 1 });
    expect(failure(() => asPlainUser(append))).toMatchObject({ code: 'store-read-only', file });
  });

  it('passes on what the work of another throws', () => {
    const mishap = new Error('a mishap of the caller');
    const store = openSqliteStore(newFile());
    expect(
      failure(() =>
        store.exclusively(() => {
          throw mishap;
        }),
      ),
    ).toBe(mishap);
    store.close();
  });
});

/** The administrator may write everywhere, so the work is done as a user who may not. */
function asPlainUser<T>(work: () => T): T {
  if (process.geteuid!() !== 0) return work();
  const NOBODY = 65_534;
  chmodSync(dir, 0o755);
  process.seteuid!(NOBODY);
  try {
    return work();
  } finally {
    process.seteuid!(0);
  }
}

describe('the schema', () => {
  const columnsOf = (sql: string): string[] =>
    sql.split('\n').flatMap((line) => /^\s+(\w+ (?:TEXT|INTEGER|REAL|BLOB))/.exec(line)?.[1] ?? []);

  it('is the one of the snapshot: stored data only grows, so add a migration and add its tables to the snapshot', () => {
    const file = newFile();
    openSqliteStore(file).close();
    const made = new Connection(file);
    const own =
      "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'item_word_%' ORDER BY name";
    const sql = (made.prepare(own).pluck().all() as string[]).map((text) => `${text};`).join('\n\n');
    made.close();
    const snapshot = readFileSync(join(import.meta.dirname, 'schema.snapshot.sql'), 'utf8');
    const columns = columnsOf(snapshot);
    expect(columns.length).toBeGreaterThan(20);
    for (const column of columns)
      expect(sql, `the column "${column}" was taken away or renamed; stored data only grows: add a new one beside it`).toContain(column);
    expect(`${sql}\n`).toBe(snapshot);
  });
});
