import { expect, it } from 'vitest';
import { createOutbox, type Content, type Delivery } from './outbox.ts';
import { memoryParcels } from './testing/memory-parcels.ts';

const note = (n: number) => ({ said: `note ${n}`, content: { what: 'photo', name: String(n), hash: '', picture: new Blob([]) } as const });
const nameOf = (content: Content): string => (content.what === 'photo' ? content.name : '');

/** A bench that meets parcels as it is told, and remembers what it took. */
function benchSaying(meet: (name: string) => Delivery['met']) {
  const taken: string[] = [];
  const send = async (content: Content): Promise<Delivery> => {
    const met = meet(nameOf(content));
    if (met === 'taken') taken.push(nameOf(content));
    return met === 'refused' ? { met, why: 'it is sold already' } : { met };
  };
  return { taken, send };
}

it('delivers in the order of keeping, and stops where the bench is away', async () => {
  let isAway = false;
  const bench = benchSaying((name) => (isAway && name !== '1' ? 'away' : 'taken'));
  const outbox = createOutbox(memoryParcels(), bench.send);
  isAway = true;
  await outbox.keep([note(1), note(2)]);
  await outbox.keep([note(3)]);
  expect(await outbox.deliver()).toBe(false);
  expect([bench.taken, outbox.state().waiting.map(({ said }) => said)]).toEqual([['1'], ['note 2', 'note 3']]);
  isAway = false;
  expect(await outbox.deliver()).toBe(true);
  expect(bench.taken).toEqual(['1', '2', '3']);
});

it('keeps what the bench does not take, with the reason, until it is put away, and goes on with the rest', async () => {
  const bench = benchSaying((name) => (name === '2' ? 'refused' : 'taken'));
  const outbox = createOutbox(memoryParcels(), bench.send);
  await outbox.keep([note(1), note(2), note(3)]);
  expect(await outbox.deliver()).toBe(true);
  expect(bench.taken).toEqual(['1', '3']);
  expect(outbox.state().refused).toMatchObject([{ said: 'note 2', refusal: 'it is sold already' }]);
  await outbox.putAway(outbox.state().refused[0]!.id);
  expect(outbox.state()).toEqual({ waiting: [], refused: [] });
});

it('runs one delivery at a time', async () => {
  const bench = benchSaying(() => 'taken');
  const outbox = createOutbox(memoryParcels(), bench.send);
  await outbox.keep([note(1), note(2)]);
  await Promise.all([outbox.deliver(), outbox.deliver()]);
  expect(bench.taken).toEqual(['1', '2']);
});

it('knows after a reload what was kept before, and tells who watches', async () => {
  const store = memoryParcels();
  await createOutbox(store, benchSaying(() => 'away').send).keep([note(1)]);
  const outbox = createOutbox(store, benchSaying(() => 'taken').send);
  let told = 0;
  outbox.watch(() => told++);
  await outbox.load();
  expect([outbox.state().waiting.length, told]).toEqual([1, 1]);
});
