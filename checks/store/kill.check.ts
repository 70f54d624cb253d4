import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { randomStream } from '../../src/core/numeric/index.ts';
import type { Stored } from '../../src/bench/events/index.ts';
import type { ItemRow } from '../../src/bench/views/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

const ROUNDS = 4;
const BATCH = 3;
const random = randomStream('kill the writers');

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-kill-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

it('keeps every acknowledged event, whole batches only, when two writers are killed in the middle of appending', async () => {
  const file = join(dir, 'salvor.sqlite');
  const acknowledged: string[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const writers = [`left-${round}`, `right-${round}`].map((name) => appendUntilKilled(file, name, 60 + Math.floor(random() * 120)));
    const heard = await Promise.all(writers);
    for (const ids of heard) expect(ids.length).toBeGreaterThanOrEqual(60);
    acknowledged.push(...heard.flat());

    const { events, rows, rowsAt } = contentsOf(file);
    const stored = new Set(events.map(({ event }) => event.id));
    expect(acknowledged.filter((id) => !stored.has(id))).toEqual([]);
    expect(stored.size).toBe(events.length);
    expect(events.map(({ seq }) => seq)).toEqual(events.map((_, index) => index + 1));
    const batches = batchSizes(events);
    expect([...new Set(batches.values())]).toEqual([BATCH]);
    expect(rows.map(({ id }) => id).sort()).toEqual([...batches.keys()].sort());
    expect(rowsAt.seq).toBe(events.length);
  }
  const database = new Database(file, { readonly: true });
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  database.close();
});

/** Starts a writer, kills it outright once it has acknowledged `enough` events, and gives the ids of all that it acknowledged. */
async function appendUntilKilled(file: string, name: string, enough: number): Promise<string[]> {
  const script = join(import.meta.dirname, 'append-until-killed.mjs');
  const writer = spawn(process.execPath, [script, file, name, String(BATCH)], { stdio: ['ignore', 'pipe', 'pipe'] });
  const closed = once(writer, 'close') as Promise<[code: number | null, signal: string | null]>;
  let [heard, complaint] = ['', ''];
  writer.stderr.on('data', (text: Buffer) => (complaint += text.toString()));
  writer.stdout.on('data', (text: Buffer) => {
    heard += text.toString();
    if (heard.split('\n').length > enough) writer.kill('SIGKILL');
  });
  const [, signal] = await closed;
  expect(signal, complaint).toBe('SIGKILL');
  // What stands after the last line break was being written when it died, and was not said.
  return heard.split('\n').slice(0, -1);
}

function contentsOf(file: string): { events: Stored[]; rows: readonly ItemRow[]; rowsAt: { seq: number } } {
  const store = openSqliteStore(file);
  try {
    return { events: store.read(0, 1_000_000), rows: store.items({ limit: 1_000_000 }).rows, rowsAt: store.rowsAt() };
  } finally {
    store.close();
  }
}

/** Number of stored events of each batch, by its text. */
function batchSizes(events: readonly Stored[]): Map<string, number> {
  const sizes = new Map<string, number>();
  for (const { event } of events) {
    const { text } = event.body as { text: string };
    sizes.set(text, (sizes.get(text) ?? 0) + 1);
  }
  return sizes;
}
