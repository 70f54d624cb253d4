import { join } from 'node:path';
import Database from 'better-sqlite3';
import { v7 } from 'uuid';
import { openBench } from '../../src/bench/open-bench.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { temporaryHome } from './server-process.ts';

export interface AppendRates {
  readonly singlePerS: number;
  readonly batchedPerS: number;
  readonly rawSinglePerS: number;
  readonly rawBatchedPerS: number;
}

const note = (): unknown => ({
  id: v7(),
  at: new Date().toISOString(),
  device: 'measure',
  version: 1,
  kind: 'note-written',
  body: { text: 'a note of usual length about a joint' },
});

/** Events a second that are checked, folded and on disk, one by one and in gestures of 20, against bare inserts into the same kind of file. */
export function appendRates(): AppendRates {
  const { home, remove } = temporaryHome();
  try {
    const store = openSqliteStore(join(home, 'salvor.sqlite'));
    const bench = openBench({ store, models: new Map(), clock: systemClock(), device: 'measure', version: '0' });
    const record = (size: number) => (): void => {
      const result = bench.record(Array.from({ length: size }, note));
      if (!result.ok) throw new Error(`refused: ${result.message}`);
    };
    const own = { singlePerS: perSecond(record(1), 1, 300), batchedPerS: perSecond(record(20), 20, 100) };
    store.close();
    return { ...own, ...rawRates(join(home, 'raw.sqlite')) };
  } finally {
    remove();
  }
}

function rawRates(file: string): { rawSinglePerS: number; rawBatchedPerS: number } {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE event (seq INTEGER PRIMARY KEY, id TEXT UNIQUE, body TEXT)');
  const insert = database.prepare('INSERT INTO event (id, body) VALUES (?, ?)');
  const write = (size: number) =>
    database.transaction(() => {
      for (let i = 0; i < size; i++) insert.run(v7(), JSON.stringify(note()));
    });
  const rates = { rawSinglePerS: perSecond(write(1), 1, 300), rawBatchedPerS: perSecond(write(20), 20, 100) };
  database.close();
  return rates;
}

function perSecond(work: () => void, size: number, times: number): number {
  const started = performance.now();
  for (let i = 0; i < times; i++) work();
  return (size * times) / ((performance.now() - started) / 1000);
}
