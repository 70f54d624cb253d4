import { describe, expect, test } from 'vitest';
import { accountTotals, layersCost } from '../../core/books/index.ts';
import { carriedByAccount } from '../books/carried-by-account.ts';
import { costOf } from '../books/carried.ts';
import type { ForeignEvent } from '../events/index.ts';
import { orderState } from '../stock/order-state.ts';
import { oneLamp, testId, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { foldLog } from './index.ts';

const models = smallModels();
const fold = (...steps: readonly Step[]) => foldLog(testLog(...steps), models);

const lot = (lotId: string, prices: Record<string, number>, price: number, modelId = 'lamp-1') =>
  [
    'lot-bought',
    {
      lot_id: lotId,
      title: lotId,
      seller: 'marsh-lane',
      price_minor: price,
      currency: 'GBP',
      items: Object.entries(prices).map(([item_id, value]) => ({ item_id, name: item_id, model_id: modelId, expected_value_minor: value })),
    },
  ] as const;
const move = (assembly_id: string, slot: string, from_item: string | null, to_item: string | null) =>
  ['transplant-done', { assembly_id, slot, from_item, to_item }] as const;
const done = (item_id: string, step: string, outcome: 'pass' | 'fail' = 'pass') => ['proof-step-done', { item_id, step, outcome }] as const;
const gradedA = ['graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'A' }] as const;
const soldAs = (item_id: string, price_minor: number) => ['sold', { item_id, as: 'working', price_minor, currency: 'GBP' }] as const;

describe('a lot', () => {
  test('is split over its items by what each is expected to be worth, to the penny', () => {
    const { items } = fold(lot('lot-1', { 'lamp-a': 1, 'lamp-b': 1, 'lamp-c': 1 }, 1000));
    expect([...items.values()].map(costOf)).toEqual([334, 333, 333]);
  });

  test('in another currency is booked at the rate typed with it', () => {
    const [kind, body] = lot('lot-1', { 'lamp-a': 1 }, 1000);
    expect(costOf(fold([kind, { ...body, currency: 'JPY', rate: 0.0051 }]).items.get('lamp-a')!)).toBe(510);
  });

  test('bought from a weighed listing closes it, and what the seller said is evidence once', () => {
    const claim = { about: 'function', function: 'light', says: 'fails' };
    const [kind, body] = lot('lot-1', { 'lamp-a': 1 }, 1000);
    const state = fold(
      [
        'listing-weighed',
        { listing_id: 'l-1', title: 't', seller: 's', model_id: 'lamp-1', price_minor: 1000, currency: 'GBP', claims: [claim] },
      ],
      [kind, { ...body, listing_id: 'l-1' }],
      ['claim-made', { item_id: 'lamp-a', claim }],
    );
    expect(state.listings.get('l-1')!.fate).toBe('bought');
    expect(state.items.get('lamp-a')!.history).toMatchObject([{ kind: 'claim', claim, seller: 'marsh-lane', eventId: testId(2) }]);
  });
});

describe('an assembly taken out for the first time', () => {
  test('becomes an item with the share of cost that its slot has in all slots of the model', () => {
    const { items } = fold(...oneLamp, move('board-a', 'board', 'lamp-a', null));
    expect(items.get('board-a')).toMatchObject({
      number: 2,
      name: 'Board of Lamp A',
      kind: 'assembly',
      modelId: 'lamp-1',
      slot: 'board',
      status: 'in-the-drawer',
      lotId: 'lot-1',
    });
    expect([costOf(items.get('board-a')!), costOf(items.get('lamp-a')!)]).toEqual([1800, 600]);
  });

  test('takes the share written in the event even when the model says another', () => {
    const [kind, body] = move('board-a', 'board', 'lamp-a', null);
    expect(costOf(fold(...oneLamp, [kind, { ...body, cost_share: 0.5 }]).items.get('board-a')!)).toBe(1200);
  });

  test('leaves a unit without assemblies with nothing to carry', () => {
    const { items } = fold(...oneLamp, move('board-a', 'board', 'lamp-a', null), move('cell-a', 'battery', 'lamp-a', null));
    expect(['lamp-a', 'board-a', 'cell-a'].map((id) => costOf(items.get(id)!))).toEqual([0, 1800, 600]);
  });
});

describe('a transplant', () => {
  const swap = [
    lot('lot-1', { 'lamp-a': 1, 'lamp-b': 1 }, 4000),
    move('board-a', 'board', 'lamp-a', null),
    move('board-b', 'board', 'lamp-b', 'lamp-a'),
  ] as const;

  test('carries its cost into the other unit and out again', () => {
    const inside = fold(...swap).items;
    expect(['lamp-a', 'lamp-b', 'board-a', 'board-b'].map((id) => costOf(inside.get(id)!))).toEqual([2000, 500, 1500, 0]);
    const out = fold(...swap, move('board-b', 'board', 'lamp-a', null)).items;
    expect(['lamp-a', 'lamp-b', 'board-a', 'board-b'].map((id) => costOf(out.get(id)!))).toEqual([500, 500, 1500, 1500]);
  });

  test('is written into the history of both homes and of the assembly', () => {
    const { items } = fold(...swap);
    expect(items.get('lamp-a')!.history).toMatchObject([
      { kind: 'slot', slot: 'board', came: null, left: 'board-a' },
      { kind: 'slot', slot: 'board', came: 'board-b', left: null },
    ]);
    expect(items.get('lamp-b')!.history).toMatchObject([{ kind: 'slot', slot: 'board', came: null, left: 'board-b' }]);
    expect(items.get('board-b')!.history).toMatchObject([{ kind: 'moved', from: 'lamp-b', to: 'lamp-a' }]);
    expect(items.get('board-b')).toMatchObject({ inside: 'lamp-a', status: 'in-a-unit' });
  });

  test('into a slot that is not free is kept as an orphan', () => {
    const state = fold(lot('lot-1', { 'lamp-a': 1, 'lamp-b': 1 }, 4000), move('board-b', 'board', 'lamp-b', 'lamp-a'));
    expect(state.orphans).toMatchObject([{ kind: 'transplant-done', missing: 'free slot board in lamp-a', demo: false }]);
    expect(state.items.has('board-b')).toBe(false);
  });

  test('goes straight into a slot whose own assembly was found missing', () => {
    const state = fold(
      lot('lot-1', { 'lamp-a': 1, 'lamp-b': 1 }, 4000),
      ['finding-noted', { item_id: 'lamp-a', place: 'cell', sees: 'missing' }],
      move('cell-b', 'battery', 'lamp-b', 'lamp-a'),
    );
    expect(state.items.get('lamp-a')!.slots.get('battery')).toBe('cell-b');
  });

  test('an assembly sold inside its unit is sold with it, and comes back with it', () => {
    const sale = [...swap, soldAs('lamp-a', 5000)] as const;
    expect(fold(...sale).items.get('board-b')!.status).toBe('sold');
    expect(fold(...sale, ['returned', { item_id: 'lamp-a', refund_minor: 5000 }]).items.get('board-b')!.status).toBe('in-a-unit');
  });

  test('parts used on an assembly inside a unit are carried by the unit, and leave with the assembly', () => {
    const bulbs = ['part-bought', { bag_id: 'bag', part: 'wire', name: 'Wire', count: 1, price_minor: 70, currency: 'GBP' }] as const;
    const used = [...swap, bulbs, ['part-used', { bag_id: 'bag', item_id: 'board-b', count: 1 }]] as const;
    expect(costOf(fold(...used).items.get('lamp-a')!)).toBe(2070);
    const out = fold(...used, move('board-b', 'board', 'lamp-a', null)).items;
    expect([costOf(out.get('lamp-a')!), costOf(out.get('board-b')!)]).toEqual([500, 1570]);
  });
});

describe('the life of a unit', () => {
  const proved = [...oneLamp, done('lamp-a', 'power'), gradedA] as const;
  const statusAfter = (...steps: readonly Step[]) => fold(...steps).items.get('lamp-a')!.status;

  test('runs from bought over the bench, proved and listed to sold', () => {
    expect(statusAfter(oneLamp[0])).toBe('bought');
    expect(statusAfter(...oneLamp)).toBe('on-the-bench');
    expect(statusAfter(...proved)).toBe('proved');
    expect(statusAfter(...proved, ['listed', { item_id: 'lamp-a', price_minor: 4000, place: 'market' }])).toBe('listed');
    expect(statusAfter(...proved, soldAs('lamp-a', 4000))).toBe('sold');
  });

  test.each([
    ['opening it', ['opened-to', { item_id: 'lamp-a', stage: 'open' }]],
    ['a remedy', ['remedy-done', { item_id: 'lamp-a', remedy: 'clean-switch', minutes: 5, outcome: 'mended' }]],
    ['a transplant', move('board-a', 'board', 'lamp-a', null)],
  ] as const)('%s after the proof undoes proof and grade', (_what, step) => {
    const item = fold(...proved, step).items.get('lamp-a')!;
    expect(item).toMatchObject({ status: 'on-the-bench', grade: null });
    expect(item.proof.size).toBe(0);
  });

  test('closing it does not undo the proof', () => {
    expect(statusAfter(...proved, ['opened-to', { item_id: 'lamp-a', stage: 'closed' }])).toBe('proved');
  });

  test('a step that fails, or a grade for parts, does not leave it proved', () => {
    expect(statusAfter(...proved, done('lamp-a', 'light', 'fail'))).toBe('on-the-bench');
    expect(statusAfter(...oneLamp, done('lamp-a', 'power', 'fail'), gradedA)).toBe('on-the-bench');
    expect(statusAfter(...oneLamp, done('lamp-a', 'power'), ['graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'parts' }])).toBe(
      'on-the-bench',
    );
  });

  test('a return puts it back on the bench with its cost, without proof', () => {
    const state = fold(...proved, soldAs('lamp-a', 4000), ['returned', { item_id: 'lamp-a', refund_minor: 4000, postage_minor: 300 }]);
    const item = state.items.get('lamp-a')!;
    expect(item).toMatchObject({ status: 'on-the-bench', grade: null, sale: null, returns: 1 });
    expect([item.proof.size, costOf(item)]).toEqual([0, 2400]);
    const stock = state.journal.filter((line) => line.account === 'stock').reduce((sum, line) => sum + line.amountMinor, 0);
    expect(stock).toBe(2400);
  });
});

describe('parts', () => {
  const bought = (count: number, price_minor: number) =>
    ['part-bought', { bag_id: 'bag', part: 'bulb-3v', name: 'Bulb', count, price_minor, currency: 'GBP' }] as const;

  test('leave the bag oldest first and their cost goes to the item', () => {
    const state = fold(...oneLamp, bought(2, 100), bought(2, 300), ['part-used', { bag_id: 'bag', item_id: 'lamp-a', count: 3 }]);
    expect(costOf(state.items.get('lamp-a')!)).toBe(2400 + 100 + 150);
    expect(state.bags.get('bag')).toMatchObject({ count: 1, layers: [{ count: 1, costMinor: 150 }] });
  });

  test('of an order fill the bags named like them, postage spread by price', () => {
    const lines = [
      { part: 'bulb-3v', name: 'Bulb', count: 10, price_minor: 300 },
      { part: 'wire', name: 'Wire', count: 1, price_minor: 100 },
    ];
    const ordered = ['order-placed', { order_id: 'o-1', supplier: 's', lines, postage_minor: 200, currency: 'GBP' }] as const;
    expect(fold(ordered).journal).toMatchObject([
      { account: 'on-order', amountMinor: 600 },
      { account: 'cash', amountMinor: -600 },
    ]);
    const arrived = fold(ordered, ['order-arrived', { order_id: 'o-1', place: 'box 2' }]);
    expect([...arrived.bags.values()]).toMatchObject([
      { id: 'bulb-3v', count: 10, place: 'box 2', layers: [{ count: 10, costMinor: 450 }] },
      { id: 'wire', count: 1, layers: [{ count: 1, costMinor: 150 }] },
    ]);
  });

  const order = [
    'order-placed',
    {
      order_id: 'o-1',
      supplier: 's',
      lines: [
        { part: 'bulb-3v', name: 'Bulb', count: 3, price_minor: 100 },
        { part: 'wire', name: 'Wire', count: 1, price_minor: 0 },
      ],
      currency: 'GBP',
      due_day: '2026-05-08',
    },
  ] as const;
  const comes = (...counts: number[]) => ['order-arrived', { order_id: 'o-1', counts }] as const;

  test('of an order that comes in parts carry all of its cost in the end, to the penny', () => {
    const first = fold(order, comes(1, 1));
    expect(first.orders.get('o-1')).toMatchObject({ arrivedAt: null, lineCosts: [{ came: 1, cameMinor: 33 }, { came: 1 }] });
    expect(orderState(first.orders.get('o-1')!, '2026-05-08')).toBe('partly-come');
    expect(orderState(first.orders.get('o-1')!, '2026-05-09')).toBe('late');
    const second = fold(order, comes(1, 1), comes(1, 0));
    expect(second.bags.get('bulb-3v')!.layers).toEqual([
      { count: 1, costMinor: 33 },
      { count: 1, costMinor: 34 },
    ]);
    const all = fold(order, comes(1, 1), comes(1, 0), comes(1, 0));
    expect(orderState(all.orders.get('o-1')!, '2027-01-01')).toBe('come');
    expect(layersCost(all.bags.get('bulb-3v')!.layers)).toBe(100);
  });

  test('that do not come any more are lost, but for what is paid back', () => {
    const state = fold(order, comes(1, 1), ['order-cancelled', { order_id: 'o-1', refund_minor: 40 }]);
    expect(orderState(state.orders.get('o-1')!, '2027-01-01')).toBe('cancelled');
    expect(Object.fromEntries(accountTotals(state.journal))).toMatchObject({ cash: -60, parts: 33, 'write-off': 27, 'on-order': 0 });
    expect(carriedByAccount(state)).toMatchObject({ parts: 33, 'write-off': 27, 'on-order': 0 });
  });

  test('of a bag have a place and terminals that can be set later', () => {
    const pattern = { name: 'two feet', pads: [{ pin: '1', x_mm: 0, y_mm: 0, w_mm: 1, h_mm: 1 }] };
    const set = fold(bought(1, 10), ['bag-set', { bag_id: 'bag', place: 'box 3', pattern }]);
    expect(set.bags.get('bag')).toMatchObject({
      place: 'box 3',
      pattern: { name: 'two feet', kind: 'other', pads: [{ kind: 'surface' }] },
    });
    const away = fold(bought(1, 10), ['bag-set', { bag_id: 'bag', pattern }], ['bag-set', { bag_id: 'bag', pattern: null }]);
    expect(away.bags.get('bag')).toMatchObject({ place: '', pattern: null });
  });
});

describe('undoing', () => {
  const received = (...after: readonly Step[]) => fold(...oneLamp, ...after).items.get('lamp-a')!.status;

  test('takes an event back, and undoing that brings it back', () => {
    expect(received(['correction', { corrects: testId(2) }])).toBe('bought');
    expect(received(['correction', { corrects: testId(2) }], ['correction', { corrects: testId(3) }])).toBe('on-the-bench');
    expect(
      received(['correction', { corrects: testId(2) }], ['correction', { corrects: testId(3) }], ['correction', { corrects: testId(4) }]),
    ).toBe('bought');
  });

  test('a correction of what is not there before it is kept as an orphan', () => {
    expect(fold(['correction', { corrects: testId(2) }], ...oneLamp).orphans).toMatchObject([{ eventId: testId(1), kind: 'correction' }]);
  });

  test('never gives a stock number twice', () => {
    const state = fold(lot('lot-1', { 'lamp-a': 1 }, 100), ['correction', { corrects: testId(1) }], lot('lot-2', { 'lamp-b': 1 }, 100));
    expect([...state.items.values()].map((item) => [item.id, item.number])).toEqual([['lamp-b', 2]]);
  });
});

describe('the demo', () => {
  const demoLot = [...lot('lot-d', { 'lamp-d': 1 }, 1000), 'demo'] as const;
  const own = lot('lot-1', { 'lamp-a': 1 }, 500);
  const away = ['demo-put-away', {}] as const;

  test('is present while its things are here', () => {
    expect(fold(demoLot, own)).toMatchObject({ demo: 'present', nextNumber: 3 });
  });

  test('put away takes all that it made along, and what was done to its things without fuss', () => {
    const settings = ['bench-set', { name: 'Demo bench' }, 'demo'] as const;
    const state = fold(settings, demoLot, own, move('board-d', 'board', 'lamp-d', null), soldAs('board-d', 900), away);
    expect([...state.items.keys()]).toEqual(['lamp-a']);
    expect(state).toMatchObject({ demo: 'put-away', settings: { name: 'My bench' } });
    expect(state.journal.every((line) => line.itemId === 'lamp-a' || line.account === 'cash')).toBe(true);
    expect(state.orphans.map((orphan) => [orphan.kind, orphan.demo])).toEqual([
      ['transplant-done', true],
      ['sold', true],
    ]);
  });

  test('comes back when the putting away is undone', () => {
    const state = fold(demoLot, own, away, ['correction', { corrects: testId(3) }]);
    expect([...state.items.keys()]).toEqual(['lamp-d', 'lamp-a']);
    expect(state.demo).toBe('present');
  });
});

test('an event from a newer version is kept and not folded', () => {
  const event: ForeignEvent = {
    id: testId(1),
    at: '2026-01-01T00:00:00Z',
    device: 'phone',
    version: 9,
    kind: 'x-rayed',
    body: { a: 1 },
    foreign: true,
  };
  expect(foldLog([{ seq: 1, event }], models).foreign).toEqual([event]);
});

test('what names an unknown thing is kept as an orphan that says what is missing', () => {
  expect(fold(['item-received', { item_id: 'nobody' }]).orphans).toEqual([
    { eventId: testId(1), kind: 'item-received', missing: 'item nobody', demo: false },
  ]);
});

test('the currency of the books does not change once money was booked', () => {
  const euro = ['bench-set', { currency: 'EUR', name: 'Quay bench' }] as const;
  expect(fold(euro).settings).toMatchObject({ currency: 'EUR', name: 'Quay bench' });
  expect(fold(...oneLamp, euro).settings).toMatchObject({ currency: 'GBP', name: 'Quay bench' });
});
