import { expect, it } from 'vitest';
import { runningSums } from './running.ts';

it('sums money in hand and profit month by month, whatever the order of the months', () => {
  const nothing = { bought_minor: 0, sold_minor: 0, fees_minor: 0, postage_minor: 0, profit_minor: 0 };
  const sums = runningSums([
    { ...nothing, month: '2026-05', sold_minor: 6300, fees_minor: 780, postage_minor: 350, profit_minor: 1200 },
    { ...nothing, month: '2026-04', bought_minor: 3400 },
  ]);
  expect(sums.cashMinor).toEqual([-3400, 1770]);
  expect(sums.profitMinor).toEqual([0, 1200]);
  expect(sums.times).toEqual(['2026-04-01', '2026-05-01'].map((day) => Date.parse(day) / 1000));
});
