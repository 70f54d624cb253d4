import { sql } from 'kysely';
import type { ItemQuery } from '../../src/bench/ports.ts';
import { openDatabase, type Database } from '../../src/edges/store/postgres/database.ts';
import { aboutQuery, eventsQuery, knownQuery } from '../../src/edges/store/postgres/event-table.ts';
import { mentionedQuery, pageQuery } from '../../src/edges/store/postgres/item-table.ts';
import { eventsOf } from './many-events.ts';
import { ask } from './postgres-server.ts';
import { noteEvent } from '../../src/edges/store/store.contract.ts';

interface Explained {
  explain(format: 'text', options: ReturnType<typeof sql>): Promise<unknown[]>;
}

/** How PostgreSQL goes about each query of the store in a database that `fillDatabase` filled, as a page for people to look over. */
export async function queryPlansPage(url: string, items: number): Promise<string> {
  const [{ version }] = (await ask(url, "SELECT current_setting('server_version') AS version")) as [{ version: string }];
  const size = `${items.toLocaleString('en')} items and ${eventsOf(items).toLocaleString('en')} events`;
  return `# Plans of the queries

How PostgreSQL ${version} goes about each query of the store on a bench of ${size}, with the rows that it really met. Written by
\`npm run plans:queries\`; look it over when a query, an index or the version of the database changes. No plan may read a whole table.

${await queryPlans(url, items)}`;
}

async function queryPlans(url: string, items: number): Promise<string> {
  const database = await openDatabase(url, 'the database');
  try {
    const plans: string[] = [];
    for (const [says, query] of queries(database, items)) plans.push(`## ${says}\n\n\`\`\`text\n${await planOf(query)}\n\`\`\`\n`);
    return plans.join('\n');
  } finally {
    await database.destroy();
  }
}

async function planOf(query: Explained): Promise<string> {
  const lines = (await query.explain('text', sql`ANALYZE, COSTS OFF, TIMING OFF, SUMMARY OFF`)) as { 'QUERY PLAN': string }[];
  return lines
    .map((line) => line['QUERY PLAN'].replace(/^(\s*(?:Filter|Index Cond|Recheck Cond|Sort Key|Hash Cond): .{0,160}).*$/, '$1'))
    .join('\n');
}

function queries(database: Database, items: number): readonly (readonly [string, Explained])[] {
  const page = (query: Partial<ItemQuery>): Explained => pageQuery(database, { limit: 50, ...query });
  const middle = Math.floor(items / 2);
  return [
    ['The list from its front', page({})],
    ['The list from its middle', page({ after: `${Math.floor(eventsOf(items) / 2)}.item-0` })],
    ['The list of one status', page({ status: ['listed'] })],
    ['The list of two statuses and a model', page({ status: ['listed', 'kept'], model: 'tern-tn20' })],
    ['Search for a common word', page({ search: 'amber' })],
    ['Search for two common words in one status', page({ search: 'amber mint', status: ['listed'] })],
    ['Search for a stock number', page({ search: `#${middle}` })],
    ['Search for a lot', page({ search: `lot ${Math.floor(middle / 5)}` })],
    ['Search for what is not there', page({ search: 'nowhere to be found' })],
    ['The events about one item', aboutQuery(database, `item-${middle}`)],
    ['The rows of the items that these events name', mentionedQuery(database, `item-${middle}`)],
    ['Reading on from a place', eventsQuery(database, eventsOf(items) - 100, 1000)],
    ['Which of these events are known', knownQuery(database, [noteEvent(1).id, noteEvent(2).id])],
  ];
}
