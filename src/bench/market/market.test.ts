import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { askingView, marketView, postageOf, returnReserve } from './index.ts';

const models = smallModels();
const lamp = models.get('lamp-1')!;
const fold = (...steps: readonly Step[]) => foldLog(testLog(...steps), models);
const seen = (sale_id: string, price_minor: number, day = '2026-01-01', more: object = {}): Step =>
  ['sale-seen', { sale_id, model_id: 'lamp-1', day, price_minor, currency: 'GBP', condition: 'B', ...more }] as Step;
const priceB = (...steps: readonly Step[]) => marketView(fold(...steps), lamp).prices.find(({ condition }) => condition === 'B')!;

describe('the market of a model', () => {
  test('starts at its typical price and narrows with what is seen', () => {
    const before = priceB();
    const sales = Array.from({ length: 12 }, (_, i) => seen(`s${i}`, 9000 + 10 * i));
    const after = priceB(...sales);
    expect(Math.abs(before.middle_minor / lamp.file.prices.working - 1)).toBeLessThan(0.1);
    expect(after.high_minor / after.low_minor).toBeLessThan(before.high_minor / before.low_minor);
    expect(after.middle_minor).toBeGreaterThan(before.middle_minor);
  });

  test('counts the own sales in, and the same id again replaces what was written down', () => {
    const own: Step = ['sold', { item_id: 'lamp-a', as: 'for-parts', price_minor: 700, currency: 'GBP' }];
    const view = marketView(fold(...oneLamp, own, seen('x', 9000), seen('x', 4000)), lamp);
    expect(view.sales.map(({ id, own: mine, price_minor, condition }) => [id, mine, price_minor, condition]).sort()).toEqual([
      ['lamp-a', true, 700, 'parts'],
      ['x', false, 4000, 'B'],
    ]);
  });

  test('names a sale that was written down twice, and one that stands out', () => {
    const sales = [8000, 8100, 8200, 8300, 8400, 8500].map((price, i) => seen(`s${i}`, price, `2026-02-0${i + 1}`));
    const view = marketView(fold(...sales, seen('twin', 8000, '2026-02-01'), seen('wild', 90_000, '2026-02-09')), lamp);
    expect(view.duplicates).toEqual([{ id: 'twin', of: 's0' }]);
    expect(view.outliers).toContain('wild');
  });

  test('a sale in another currency counts at the rate that was typed', () => {
    const view = marketView(fold(seen('e', 10_000, '2026-01-01', { currency: 'EUR', rate: 0.85 })), lamp);
    expect(view.sales[0]!.price_minor).toBe(8500);
  });
});

test('an ask that earns most a month pays for the next unit, so it is no give-away', () => {
  const view = marketView(fold(), lamp);
  expect(view.best_ask_minor).toBeGreaterThan(view.asks[0]!.ask_minor);
  expect(view.best_ask_minor).toBeLessThan(view.asks.at(-1)!.ask_minor);
});

describe('postage', () => {
  const heavy = { ...lamp, file: { ...lamp.file, weight_g: 275 } };
  const table = (from_day: string, ...prices: readonly number[]): Step => [
    'postage-set',
    { from_day, bands: prices.map((price_minor, i) => ({ up_to_g: 500 * (i + 1), price_minor })) },
  ];
  const usual = fold().settings.postageOutMinor;

  test('is what the table of the day says for the parcel of a unit', () => {
    expect(postageOf(fold(...oneLamp, table('2020-01-01', 320, 460)), heavy)).toBe(320);
    expect(postageOf(fold(...oneLamp, table('2020-01-01', 320), table('2025-06-01', 350), table('2099-01-01', 999)), heavy)).toBe(350);
  });

  test('is the usual one without a table, without a weight, and for what is too heavy', () => {
    const tabled = fold(...oneLamp, table('2020-01-01', 320));
    expect(postageOf(fold(...oneLamp), heavy)).toBe(usual);
    expect(postageOf(tabled, lamp)).toBe(usual);
    expect(postageOf(tabled, { ...lamp, file: { ...lamp.file, weight_g: 400 } })).toBe(usual);
  });

  test('goes off what an asking price leaves', () => {
    const net = (...steps: readonly Step[]): number => {
      const state = fold(...oneLamp, ...steps);
      const { ask_minor: ask, net_minor: left } = askingView(state, heavy, state.items.get('lamp-a')!, null);
      return ask - left;
    };
    expect(net(table('2020-01-01', 2000)) - net(table('2020-01-01', 0))).toBeGreaterThan(1500);
  });
});

describe('the reserve for returns', () => {
  const gone: Step = ['sold', { item_id: 'lamp-a', as: 'working', price_minor: 6000, postage_charged_minor: 400, currency: 'GBP' }];

  test('is the chance of a return of what was sold lately', () => {
    const { chance, open, reserve_minor } = returnReserve(fold(...oneLamp, gone));
    expect(open).toBe(1);
    expect(reserve_minor).toBe(Math.round(chance * 6400));
  });

  test('grows with each return, and forgets sales that are too old to come back', () => {
    const back: Step = ['returned', { item_id: 'lamp-a', refund_minor: 6000 }];
    const again = returnReserve(fold(...oneLamp, gone, back, gone));
    expect(again.returned).toBe(1);
    expect(again.reserve_minor).toBeGreaterThan(returnReserve(fold(...oneLamp, gone)).reserve_minor);
    const state = fold(...oneLamp, gone);
    expect(returnReserve({ ...state, newestAt: '2026-09-01T00:00:00.000Z' })).toMatchObject({ open: 0, reserve_minor: 0 });
  });
});

describe('what to ask for a unit', () => {
  const listed: Step = ['listed', { item_id: 'lamp-a', price_minor: 9000, place: 'The Fair' }];

  test('counts the fee table of the place where it is offered, from its day on', () => {
    const fees = (percent: number, from_day: string): Step => ['fees-set', { place: 'The Fair', from_day, bands: [{ percent }] }] as Step;
    const at = (...steps: readonly Step[]) => {
      const state = fold(...oneLamp, ...steps, listed);
      return askingView(state, lamp, state.items.get('lamp-a')!, null);
    };
    const [dear, later] = [at(fees(30, '2020-01-01')), at(fees(30, '2020-01-01'), fees(5, '2021-01-01'), fees(60, '2099-01-01'))];
    expect(Math.abs(dear.fee_minor / dear.ask_minor - 0.3)).toBeLessThan(0.001);
    expect(Math.abs(later.fee_minor / later.ask_minor - 0.05)).toBeLessThan(0.001);
  });

  test('a bid far below what waiting brings is countered, a high one accepted', () => {
    const state = fold(...oneLamp, listed);
    const bid = (minor: number) => askingView(state, lamp, state.items.get('lamp-a')!, minor).bid!;
    expect(bid(1).do).toBe('counter');
    expect(bid(1).counter_minor).toBeGreaterThan(bid(1).reserve_minor);
    expect(bid(100_000).do).toBe('accept');
    expect(askingView(state, lamp, state.items.get('lamp-a')!, null).bid).toBeNull();
  });

  test('each price that a unit was offered at is remembered, and the last one sold it', () => {
    const lower: Step = ['listed', { item_id: 'lamp-a', price_minor: 7000, place: 'The Fair' }];
    const gone: Step = ['sold', { item_id: 'lamp-a', as: 'for-parts', price_minor: 6800, currency: 'GBP' }];
    const { offers } = fold(...oneLamp, listed, lower, gone).items.get('lamp-a')!;
    expect(offers.map(({ priceMinor, sold }) => [priceMinor, sold])).toEqual([
      [9000, false],
      [7000, true],
    ]);
    expect(offers[0]!.until).toBe(offers[1]!.from);
  });
});
