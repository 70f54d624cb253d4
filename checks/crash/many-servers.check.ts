import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noPostgres, startPostgres, type PostgresServer } from '../store/postgres-server.ts';
import { manyServers } from './many-servers.ts';

const reason = noPostgres();

describe.skipIf(reason !== null)(`several servers on one database${reason ? ` (left out: ${reason})` : ''}`, () => {
  let postgres: PostgresServer;
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres.stop());

  it('lose no acknowledged event when one after the other is killed, and the database once, and agree in the end', async () => {
    const result = await manyServers(postgres, { servers: 3, kills: 3, databaseCrashes: 1, total: 600, seed: 'kill some servers' });
    expect(result).toEqual({ kills: 3, databaseCrashes: 1, acknowledged: 600, lost: 0, doubled: 0, apart: 0 });
  }, 300_000);
});
