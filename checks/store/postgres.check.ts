import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { subjectsKept } from '../../src/bench/shared/index.ts';
import type { AnyEvent } from '../../src/bench/events/index.ts';
import type { SharedStore } from '../../src/bench/ports-shared.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { itemRow, noteEvent, storeContract } from '../../src/edges/store/store.contract.ts';
import { ask, noPostgres, startPostgres, type PostgresServer } from './postgres-server.ts';
import { storeDifferences } from './store-differences.ts';

const reason = noPostgres();
const NO_ROWS = { put: [], remove: [], version: 1 };

describe.skipIf(reason !== null)(`stores on PostgreSQL${reason ? ` (left out: ${reason})` : ''}`, () => {
  let server: PostgresServer;
  let dir: string;
  let files = 0;
  beforeAll(async () => {
    dir = mkdtempSync(join(tmpdir(), 'salvor-two-stores-'));
    server = await startPostgres(['fsync=off']);
  });
  afterAll(async () => {
    await server.stop();
    rmSync(dir, { recursive: true, force: true });
  });
  const openAt = (url: string): Promise<SharedStore> => openPostgresStore(url, subjectsKept);
  const open = async (): Promise<SharedStore> => openAt(await server.newDatabase());
  const failureOf = (work: Promise<unknown>): Promise<unknown> =>
    work.then(
      () => 'no failure',
      (error: unknown) => error,
    );

  storeContract('PostgreSQL', open);

  it('answer as the embedded store does, whatever is done with both', async () => {
    const left = async () => openSqliteStore(join(dir, `${++files}.sqlite`));
    const { cases, differing } = await storeDifferences({ left, right: open }, 4, 'two stores');
    expect(cases).toBeGreaterThan(15);
    expect(differing).toEqual([]);
  });

  it('find the events about an item, also those of a lot, of a transplant and corrections of corrections', async () => {
    const store = await open();
    const event = (n: number, kind: string, body: object): AnyEvent => ({ ...noteEvent(n), kind, body }) as AnyEvent;
    const lot = { lot_id: 'l', title: 't', seller: 's', price_minor: 1, currency: 'GBP', items: [{ item_id: 'a' }, { item_id: 'b' }] };
    await store.append(
      [
        event(1, 'lot-bought', lot),
        event(2, 'note-written', { text: 'about nothing' }),
        event(3, 'transplant-done', { assembly_id: 'board', from_item: 'a', to_item: null, slot: 'board' }),
        event(4, 'correction', { corrects: noteEvent(3).id }),
        event(5, 'correction', { corrects: noteEvent(4).id }),
        event(6, 'note-written', { item_id: 'b', text: 'x' }),
      ],
      NO_ROWS,
    );
    const about = async (id: string): Promise<number[]> => (await store.about(id)).events.map(({ seq }) => seq);
    expect([await about('a'), await about('b'), await about('board'), await about('c')]).toEqual([[1, 3, 4, 5], [1, 6], [3, 4, 5], []]);
    await store.close();
  });

  it('give out places without gaps to processes that append at once, and whoever reads on skips none', async () => {
    const url = await server.newDatabase();
    const stores = await Promise.all([openAt(url), openAt(url), openAt(url)]);
    const seen: number[] = [];
    const reading = (async () => {
      while (seen.length < 240) for (const { seq } of await stores[2]!.read(seen.length, 100)) seen.push(seq);
    })();
    const writing = [0, 1].map(async (side) => {
      for (let n = 0; n < 60; n++) await stores[side]!.append([noteEvent(side * 1000 + n), noteEvent(side * 1000 + 500 + n)], NO_ROWS);
    });
    await Promise.all([...writing, reading]);
    expect(seen).toEqual(Array.from({ length: 240 }, (_, i) => i + 1));
    await Promise.all(stores.map((store) => store.close()));
  });

  it('tell those who watch that another process has appended, also after the connection was cut', async () => {
    const url = await server.newDatabase();
    const [left, right] = [await openAt(url), await openAt(url)];
    const told: true[] = [];
    right.watch(() => void told.push(true));
    const isTold = async (): Promise<void> => {
      while (told.length === 0) await wait(5);
      told.length = 0;
    };
    await isTold();
    await left.append([noteEvent(1)], NO_ROWS);
    await isTold();
    await ask(url, 'SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()');
    await isTold();
    await left.append([noteEvent(2)], NO_ROWS).catch(() => left.append([noteEvent(2)], NO_ROWS));
    await isTold();
    expect(await right.lastSeq()).toBe(2);
    await Promise.all([left.close(), right.close()]);
  });

  it('never edit the log', async () => {
    const url = await server.newDatabase();
    const store = await openAt(url);
    await store.append([noteEvent(1)], NO_ROWS);
    for (const statement of ["UPDATE event SET body = '{}'", 'DELETE FROM event', 'TRUNCATE event'])
      await expect(ask(url, statement)).rejects.toThrow('the log is never edited');
    await store.close();
  });

  it('keep texts that PostgreSQL has no room for: U+0000 in a row is shown as U+FFFD, in an event it stays', async () => {
    const store = await open();
    await store.append([noteEvent(1, 'a\u0000b')], { put: [itemRow(1, { name: 'a\u0000b' })], remove: [], version: 1 });
    expect((await store.items({ limit: 1 })).rows[0]!.name).toBe('a\uFFFDb');
    expect((await store.read(0, 1))[0]!.event.body).toEqual({ text: 'a\u0000b' });
    await store.close();
  });

  it('say what is wrong with a database that cannot serve, without its password', async () => {
    const url = await server.newDatabase();
    const broken = [
      [url.replace(/bench_\d+$/, 'nowhere'), 'database-refused', 'the database nowhere on 127.0.0.1'],
      [url.replace(/:\d+\//, ':1/').replace('salvor@', 'salvor:secret@'), 'database-away', 'cannot be reached'],
      ['postgres://no port here:x', 'database-refused', 'of the form'],
    ] as const;
    for (const [address, code, clause] of broken) {
      const error = await failureOf(openAt(address));
      expect(error).toMatchObject({ code, message: expect.stringContaining(clause) });
      expect((error as Error).message).not.toContain('secret');
    }
    await (await openAt(url)).close();
    await ask(url, 'UPDATE schema_version SET version = 99');
    expect(await failureOf(openAt(url))).toMatchObject({ code: 'store-too-new', schema: { found: 99, known: 1 } });
  });
});
