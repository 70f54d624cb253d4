import { expect, test } from 'vitest';
import { openBench } from '../open-bench.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';

let count = 0;
const clock = {
  now: () => new Date(Date.UTC(2026, 4, 1, 9, count)),
  newId: () => `019f0000-0000-7000-8000-${String((count += 1)).padStart(12, '0')}`,
};
const lotOf = (...ids: string[]) => ({
  lot_id: `lot-${ids[0]}`,
  title: 't',
  seller: 's',
  price_minor: 100,
  currency: 'GBP',
  items: ids.map((item_id) => ({ item_id, name: item_id, model_id: 'lamp-g', expected_value_minor: 1 })),
});

function started() {
  const bench = openBench({ store: memoryStore(), models: smallModels(), clock, device: 'bench-1', version: '0' });
  const record = (kind: string, body: object): void => expect(bench.record([{ kind, body }])).toMatchObject({ ok: true });
  record('model-begun', { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } });
  record('lot-bought', lotOf('gone', 'here'));
  for (const item_id of ['gone', 'here']) record('trial-done', { item_id, function: 'light', outcome: 'fails' });
  const rate = (value: number): void =>
    record('model-fact-set', { model_id: 'lamp-g', section: 'faults', id: 'bulb-open', field: 'rate', value });
  const beliefOf = (id: string) => bench.item(id)!.belief;
  return { bench, record, rate, beliefOf };
}

test('what a model learns later moves the belief of what is here, and not of what has left', () => {
  const { record, rate, beliefOf, bench } = started();
  record('scrapped', { item_id: 'gone', reason: 'burnt' });
  const before = [beliefOf('gone'), beliefOf('here')];
  rate(0.9);
  expect(beliefOf('gone')).toEqual(before[0]);
  expect(beliefOf('here')).not.toEqual(before[1]);
  expect(bench.item('gone')!.model).toMatchObject({ version: 1, newest_version: 2 });
  record('model-judged-again', { item_id: 'gone', model_id: 'lamp-g' });
  expect(beliefOf('gone')).not.toEqual(before[0]);
  expect(bench.item('gone')!.model).toMatchObject({ version: 2, newest_version: 2 });
  rate(0.1);
  expect(bench.item('gone')!.model).toMatchObject({ version: 2, newest_version: 3 });
});

test('a model that was begun can be used in the same moment, and units of it are known after a restart', () => {
  const store = memoryStore();
  const open = () => openBench({ store, models: smallModels(), clock, device: 'bench-1', version: '0' });
  const first = open();
  const begun = { kind: 'model-begun', body: { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } } };
  expect(first.record([begun, { kind: 'lot-bought', body: lotOf('unit') }])).toMatchObject({ ok: true });
  expect(first.item('unit')!.advice.headline).not.toBe('');
  expect(first.models().at(-1)).toMatchObject({ id: 'lamp-g', version: 1, units: 1 });
  const second = open();
  expect(second.item('unit')!.model).toMatchObject({ name: 'Grown lamp', version: 1 });
  expect(second.item('unit')!.belief).toEqual(first.item('unit')!.belief);
});

test('a fact that is refused leaves no trace, and the rest of its batch neither', () => {
  const { bench } = started();
  const fact = (value: unknown) => ({
    kind: 'model-fact-set',
    body: { model_id: 'lamp-g', section: 'faults', id: 'bulb-open', field: 'rate', value },
  });
  expect(bench.record([fact(0.5), fact(7)])).toMatchObject({ ok: false, index: 1, code: 'fact-does-not-fit' });
  expect(bench.model('lamp-g')).toMatchObject({ version: 1 });
  expect(bench.model('lamp-g')!.file.faults.find(({ id }) => id === 'bulb-open')!.rate).toBe(0.2);
});
