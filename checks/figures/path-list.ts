import { join } from 'node:path';
import type { RandomStream } from '../../src/core/numeric/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { ROWS_VERSION, Status, type ItemRow } from '../../src/bench/views/index.ts';
import type { EventStore, ItemQuery } from '../../src/bench/ports.ts';
import { quantile } from './figure.ts';
import { temporaryHome } from './server-process.ts';

const NAMES = ['slate', 'amber', 'grey', 'cracked', 'boxed', 'yellowed', 'spare', 'scuffed', 'mint', 'rattling'];
const SELLERS = ['harbour clearance', 'attic finds', 'quay auctions', 'returns desk'];

/** 95th percentile and median of the time for one page of a list, over lists, filters, searches and deep pages. */
export function listP95(count: number, random: RandomStream): { p95Ms: number; medianMs: number; queries: number } {
  const { home, remove } = temporaryHome();
  const store = openSqliteStore(join(home, 'salvor.sqlite'));
  try {
    store.replaceRows(
      Array.from({ length: count }, (_, i) => row(i, random)),
      { seq: 0, version: ROWS_VERSION },
    );
    const times = Array.from({ length: 400 }, () => timeOf(store, query(random, store)));
    return { p95Ms: quantile(times, 0.95), medianMs: quantile(times, 0.5), queries: times.length };
  } finally {
    store.close();
    remove();
  }
}

const pick = <T>(list: readonly T[], random: RandomStream): T => list[Math.floor(random() * list.length)]!;

function row(i: number, random: RandomStream): ItemRow {
  return {
    id: `item-${i}`,
    number: i + 1,
    name: `${pick(NAMES, random)} ${pick(NAMES, random)} player ${i}`,
    kind: random() < 0.8 ? 'unit' : 'assembly',
    model_id: pick(['tern-tn10', 'tern-tn20', 'corrie-cp4'], random),
    status: pick(Status.options, random),
    lot_id: `lot-${Math.floor(i / 5)}`,
    lot_title: `lot ${Math.floor(i / 5)} of players`,
    seller: pick(SELLERS, random),
    place: '',
    slot: '',
    cost_minor: Math.floor(random() * 5000),
    grade: '',
    changed_at: '2026-05-01T09:00:00Z',
    changed_seq: i,
  };
}

function query(random: RandomStream, store: EventStore): ItemQuery {
  const search = pick(
    [
      undefined,
      undefined,
      pick(NAMES, random),
      `${pick(NAMES, random)} play`,
      `#${Math.ceil(random() * 100_000)}`,
      'harb',
      `item${Math.floor(random() * 9)}`,
    ],
    random,
  );
  const status = random() < 0.4 ? [pick(Status.options, random)] : undefined;
  const base = { limit: 50, ...(search ? { search } : {}), ...(status ? { status } : {}) };
  if (random() < 0.5) return base;
  const next = store.items(base).next;
  return next ? { ...base, after: next } : base;
}

function timeOf(store: EventStore, asked: ItemQuery): number {
  const started = performance.now();
  store.items(asked);
  return performance.now() - started;
}
