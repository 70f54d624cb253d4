import { expect, test } from 'vitest';
import { openBench } from '../open-bench.ts';
import { oneLamp, testLog } from '../testing/events.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';
import { moveLog } from './move-log.ts';

const clock = { now: () => new Date('2026-05-01T09:00:00Z'), newId: () => '' };
const emptyBench = () => openBench({ store: memoryStore(), models: smallModels(), clock, device: 'b', version: '0' });
const log = testLog(...oneLamp).map(({ event }) => event);

test('a log that arrives whole gives the same hash on both sides', async () => {
  const [from, to] = [emptyBench(), emptyBench()];
  from.adopt(log);
  expect(await moveLog(from, { bench: to, adopt: to.adopt }, (text) => text)).toMatchObject({ ok: true, events: log.length });
});

test('a log of which something was lost on the way is told by its hash', async () => {
  const [from, to] = [emptyBench(), emptyBench()];
  from.adopt(log);
  const moved = await moveLog(from, { bench: to, adopt: (events) => to.adopt(events.slice(0, -1)) }, (text) => String(text.length));
  expect(moved).toMatchObject({ ok: false, code: 'move-differs' });
});

test('a bench that holds something takes no log', async () => {
  const [from, to] = [emptyBench(), emptyBench()];
  from.adopt(log);
  to.adopt(log);
  expect(await moveLog(from, { bench: to, adopt: to.adopt }, (text) => text)).toMatchObject({ ok: false, code: 'bench-not-empty' });
});
