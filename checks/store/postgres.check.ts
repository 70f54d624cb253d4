import { afterAll, beforeAll, describe } from 'vitest';
import { subjectsOf } from '../../src/bench/live/subjects-of.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { storeContract } from '../../src/edges/store/store.contract.ts';
import { noPostgres, startPostgres, type PostgresServer } from './postgres-server.ts';

const reason = noPostgres();

describe.skipIf(reason !== null)(`stores on PostgreSQL${reason ? ` (left out: ${reason})` : ''}`, () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await startPostgres(['fsync=off']);
  });
  afterAll(() => server.stop());

  storeContract('PostgreSQL', async () => openPostgresStore(await server.newDatabase(), (event) => subjectsOf(event, () => undefined)));
});
