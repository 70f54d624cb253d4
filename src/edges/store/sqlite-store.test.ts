import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Connection from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { memoryStore } from '../../bench/testing/memory-store.ts';
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
    const file = newFile();
    openSqliteStore(file).close();
    const database = new Connection(file);
    expect(database.pragma('journal_mode', { simple: true })).toBe('wal');
    database.close();
  });

  it('says that a later Salvor has written it, and leaves it as it is', () => {
    const file = newFile();
    const database = new Connection(file);
    database.pragma('user_version = 1000');
    database.close();
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-too-new', file });
  });

  it('says that a file is no database, or that it is damaged', () => {
    const file = newFile();
    writeFileSync(file, 'this is a shopping list, and a long one at that. '.repeat(100));
    expect(failure(() => openSqliteStore(file))).toMatchObject({ code: 'store-not-a-database' });
  });
});

describe('the schema', () => {
  const columnsOf = (sql: string): string[] => sql.split('\n').filter((line) => /^\s+\w+ (TEXT|INTEGER|REAL|BLOB)/.test(line));

  it('is the one of the snapshot: stored data only grows, so add a migration and add its tables to the snapshot', () => {
    const file = newFile();
    openSqliteStore(file).close();
    const made = new Connection(file);
    const own =
      "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'item_word_%' ORDER BY name";
    const sql = (made.prepare(own).pluck().all() as string[]).map((text) => `${text};`).join('\n\n');
    made.close();
    const snapshot = readFileSync(join(import.meta.dirname, 'schema.snapshot.sql'), 'utf8');
    for (const column of columnsOf(snapshot))
      expect(sql, `the column "${column.trim()}" was taken away; stored data only grows`).toContain(column);
    expect(`${sql}\n`).toBe(snapshot);
  });
});
