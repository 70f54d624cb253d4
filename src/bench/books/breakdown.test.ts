import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { booksView, breakdownView } from './index.ts';

const models = smallModels();
const work: Step = ['remedy-done', { item_id: 'lamp-a', remedy: 'new-bulb', minutes: 30, outcome: 'mended' }];
const sold: Step = ['sold', { item_id: 'lamp-a', as: 'for-parts', price_minor: 4000, fees_minor: 400, currency: 'GBP' }];

test('profit by model, seller and remedy is that of the books, and an unsold unit counts nowhere', () => {
  expect(breakdownView(foldLog(testLog(...oneLamp, work), models), models).by_model).toEqual([]);
  const state = foldLog(testLog(...oneLamp, work, sold), models);
  const view = breakdownView(state, models);
  const { profit_minor } = booksView(state).units[0]!;
  for (const lines of [view.by_model, view.by_seller, view.by_remedy]) {
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ units: 1, profit_minor, minutes: 30, profit_per_hour_minor: profit_minor! * 2 });
  }
  expect(view.by_remedy[0]!.name).toBe('New bulb');
  expect(view.estimates).toMatchObject([{ item_id: 'lamp-a', sold_minor: 4000 }]);
});
