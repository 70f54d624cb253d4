import { join } from 'node:path';
import { subjectsKept } from '../../src/bench/shared/index.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { startPostgres } from '../store/postgres-server.ts';
import { storeDifferences } from '../store/store-differences.ts';
import type { Figure, Progress } from './figure.ts';
import { temporaryHome } from './server-process.ts';

const SCRIPTS = 100;

/** Where the two stores do not answer alike. */
export async function storeFigures(progress: Progress): Promise<Figure[]> {
  progress('Doing the same with both stores …');
  const postgres = await startPostgres(['fsync=off']);
  const { home, remove } = temporaryHome();
  let files = 0;
  try {
    const { cases, steps, differing } = await storeDifferences(
      {
        left: async () => openSqliteStore(join(home, `${++files}.sqlite`)),
        right: async () => openPostgresStore(await postgres.newDatabase(), subjectsKept),
      },
      SCRIPTS,
      'figures of trust',
    );
    const reference = `of ${cases} cases, the contract of stores and ${SCRIPTS} scripts of random work, ${steps} steps in all, each played on SQLite and on PostgreSQL${differing.length > 0 ? `: ${differing.join(', ')}` : ''}; U+0000 in the text of a list is the one known gap and has a check of its own`;
    return [{ figure: 'trust.store_differences', value: differing.length, unit: '', target: '= 0', reference }];
  } finally {
    await postgres.stop();
    remove();
  }
}
