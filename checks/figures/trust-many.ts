import { randomStream } from '../../src/core/numeric/index.ts';
import { itemHistory, subjectsKept } from '../../src/bench/shared/index.ts';
import type { SharedStore } from '../../src/bench/ports-shared.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { eventsOf, fillDatabase, someQuery, someSearch } from '../store/many-events.ts';
import { startPostgres } from '../store/postgres-server.ts';
import { quantile, round, type Figure, type Progress } from './figure.ts';

export const ITEMS = 1_000_000;
const ASKED = 400;

/** The settings of a database of that size on a small machine; everything else as PostgreSQL comes. */
export const LARGE = ['shared_buffers=1GB', 'maintenance_work_mem=256MB', 'max_wal_size=4GB'] as const;

/** How long lists, searches and opening a unit take in a database of a million items. */
export const manyFigures = (progress: Progress): Promise<Figure[]> => withMany(progress, ITEMS, (url) => timesOfMany(url, ITEMS, progress));

/** Fills a database of its own with so many items for `work`, and throws it away. */
export async function withMany<T>(progress: Progress, items: number, work: (url: string) => Promise<T>): Promise<T> {
  const server = await startPostgres([...LARGE, 'fsync=off']);
  try {
    const url = await server.newDatabase();
    progress(`Filling PostgreSQL with ${items.toLocaleString('en')} items and ${eventsOf(items).toLocaleString('en')} events …`);
    await fillDatabase(url, items, randomStream('rows of many'), (done) => progress(`… ${done.toLocaleString('en')} items`));
    return await work(url);
  } finally {
    await server.stop();
  }
}

export async function timesOfMany(url: string, items: number, progress: Progress): Promise<Figure[]> {
  const store = await openPostgresStore(url, subjectsKept);
  const times = await measureAll(store, items, progress);
  await store.close();
  const size = `${items.toLocaleString('en')} items and ${eventsOf(items).toLocaleString('en')} events in PostgreSQL on this machine, ${ASKED} of each after as many to warm up`;
  return [
    figure(
      'trust.pg_open_unit_p95_ms',
      times.open,
      '≤ 20',
      `row and log of a unit from its own events, of ${size}; median ${median(times.open)} ms`,
    ),
    figure('trust.pg_list_p95_ms', times.list, 'shown', `a page of 50, by filters, some deep; ${size}; median ${median(times.list)} ms`),
    figure(
      'trust.pg_search_p95_ms',
      times.search,
      'shown',
      `a page of 50 by words, common and rare; ${size}; median ${median(times.search)} ms`,
    ),
  ];
}

const median = (times: readonly number[]): number => round(quantile(times, 0.5));
const figure = (name: string, times: readonly number[], target: string, reference: string): Figure => ({
  figure: name,
  value: round(quantile(times, 0.95)),
  unit: 'ms',
  target,
  reference,
});

async function measureAll(store: SharedStore, items: number, progress: Progress) {
  const random = randomStream('questions to many');
  const open = async (): Promise<void> => {
    const history = itemHistory(await store.about(`item-${Math.floor(random() * items)}`), new Map());
    if (history?.log.length !== 11) throw new Error(`a unit came back with ${history?.log.length} events, not with 11`);
  };
  const list = async (): Promise<void> => {
    const { search: _search, ...query } = someQuery(items, random);
    const deep = random() < 0.3 ? { after: `${Math.floor(random() * eventsOf(items))}.item-0` } : {};
    await store.items({ ...query, ...deep });
  };
  const search = async (): Promise<void> => void (await store.items({ ...someQuery(items, random), search: someSearch(items, random) }));
  const times: Record<'open' | 'list' | 'search', number[]> = { open: [], list: [], search: [] };
  for (const [name, work] of Object.entries({ open, list, search })) {
    progress(`Asking: ${name} …`);
    await timesOf(work);
    times[name as keyof typeof times] = await timesOf(work);
  }
  return times;
}

async function timesOf(work: () => Promise<void>): Promise<number[]> {
  const times: number[] = [];
  for (let n = 0; n < ASKED; n++) {
    const started = performance.now();
    await work();
    times.push(performance.now() - started);
  }
  return times;
}
