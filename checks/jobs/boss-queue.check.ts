import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JobQueue } from '../../src/bench/ports-jobs.ts';
import { openBossQueue } from '../../src/edges/jobs/index.ts';
import { jobQueueContract } from '../../src/edges/jobs/job-queue.contract.ts';
import { ask, noPostgres, startPostgres, type PostgresServer } from '../store/postgres-server.ts';

const reason = noPostgres();

describe.skipIf(reason !== null)(`jobs in PostgreSQL${reason ? ` (left out: ${reason})` : ''}`, () => {
  let server: PostgresServer;
  beforeAll(async () => {
    server = await startPostgres(['fsync=off']);
  });
  afterAll(() => server.stop());
  const openAt = (url: string): Promise<JobQueue> => openBossQueue(url, () => undefined);

  jobQueueContract('the queue in PostgreSQL', async () => openAt(await server.newDatabase()));

  it('that one process asks for are done by another, and both get one answer', async () => {
    const url = await server.newDatabase();
    const [asking, other, doing] = [await openAt(url), await openAt(url), await openAt(url)];
    let done = 0;
    await doing.serve('far', async (job: string) => `${job} ${++done}`);
    expect(await Promise.all([asking.ask('far', 'a'), other.ask('far', 'a')])).toEqual(['a 1', 'a 1']);
    await Promise.all([asking, other, doing].map((queue) => queue.close()));
  });

  it('are done again by another process when the one that did them is gone', async () => {
    const url = await server.newDatabase();
    const [gone, left] = [await openAt(url), await openAt(url)];
    let isBegun = (): void => undefined;
    const begun = new Promise<void>((resolve) => (isBegun = resolve));
    await gone.serve('long', () => {
      isBegun();
      return new Promise(() => undefined);
    });
    const answer = left.ask('long', 1);
    await begun;
    await ask(url, "UPDATE pgboss.job SET started_on = now() - interval '1 hour'");
    await left.serve('long', async () => 'done');
    expect(await answer).toBe('done');
    await Promise.all([gone.close(), left.close()]);
  });
});
