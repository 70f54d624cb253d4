import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { ItemHistory } from '../../src/bench/views/index.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import { openSharedBench, subjectsKept } from '../../src/bench/shared/index.ts';
import { readFolder } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { loadModels } from '../../src/edges/models/index.ts';
import { openPostgresStore } from '../../src/edges/store/postgres/postgres-store.ts';
import { noPostgres, startPostgres, type PostgresServer } from './postgres-server.ts';

const ROOT = join(import.meta.dirname, '../..');
const reason = noPostgres();
let server: PostgresServer | undefined;
beforeAll(async () => {
  if (reason === null) server = await startPostgres(['fsync=off']);
});
afterAll(() => server?.stop());

it.skipIf(reason !== null)(
  `each item of the demo has the row and the log from its own events that it has from the whole log${reason ? ` (left out: ${reason})` : ''}`,
  async () => {
    const { models } = await loadModels(join(ROOT, 'models'));
    const demo = await readFolder(join(ROOT, 'demo'));
    if (!demo.ok) throw new Error(demo.detail);
    const parts = { models, clock: systemClock(), device: 'check', version: '0' };
    const whole = openBench({ ...parts, store: memoryStore() });
    whole.adopt(demo.events);
    const shared = await openPostgresStore(await server!.newDatabase(), subjectsKept);
    const { door, close } = await openSharedBench({ ...parts, shared });
    await door.adopt(demo.events);
    const ids = [...whole.state().items.keys()];
    expect(ids.length).toBeGreaterThan(14);
    for (const id of ids) {
      const [own, all] = [await door.history(id), whole.history(id)!];
      expect(own!.row).toEqual(all.row);
      expect(own!.log.map(({ event_id }) => event_id)).toEqual(all.log.map(({ event_id }) => event_id));
      // Names of bags are known to the whole bench only.
      const texts = ({ log }: ItemHistory): string[] => log.filter(({ kind }) => kind !== 'part-used').map(({ text }) => text);
      expect(texts(own!)).toEqual(texts(all));
    }
    expect(await door.history('nobody')).toBeNull();
    await close();
    await shared.close();
  },
);
