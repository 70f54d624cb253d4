import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { modelsWithGrown } from './models-with-grown.ts';
import { teachableFrom } from './teachable.ts';

const shelf = smallModels();
const start: Step[] = [
  ['model-begun', { model_id: 'lamp-g', name: 'Grown lamp', revision: 'B', currency: 'GBP', from: { copy_of: 'lamp-1' } }],
  [
    'lot-bought',
    {
      lot_id: 'l',
      title: 't',
      seller: 's',
      price_minor: 100,
      currency: 'GBP',
      items: [
        { item_id: 'unit', name: 'Unit', model_id: 'lamp-g', expected_value_minor: 1 },
        { item_id: 'other', name: 'Other', model_id: 'lamp-1', expected_value_minor: 1 },
      ],
    },
  ],
];
const volts = (value: number): Step => ['reading-taken', { item_id: 'unit', point: 'cell-v', mode: 'volts', value }];
const remedy: Step = ['remedy-done', { item_id: 'unit', remedy: 'clean-switch', minutes: 1, outcome: 'mended' }];
const taught = (value: number): Step => [
  'model-reading-taught',
  { model_id: 'lamp-g', board: '#1 Unit', point: 'cell-v', mode: 'volts', value, item_id: 'unit' },
];
function from(itemId: string, ...steps: Step[]) {
  const state = foldLog(testLog(...start, ...steps), shelf);
  const item = state.items.get(itemId)!;
  return teachableFrom(state, item, modelsWithGrown(shelf, () => state).get(item.modelId));
}

test('the last reading of each point since the last work can be taught, under the number of the unit', () => {
  expect(from('unit', volts(1), remedy, volts(2.9), volts(3))).toEqual({
    board: '#1 Unit',
    revision: 'B',
    is_proved: false,
    readings: [{ point: 'cell-v', name: 'Cell voltage', mode: 'volts', value: 3 }],
  });
  expect(from('unit', volts(1), remedy)!.readings).toEqual([]);
});

test('what was taught of a unit is not offered again, but for another value', () => {
  expect(from('unit', volts(3), taught(3))!.readings).toEqual([]);
  expect(from('unit', volts(3), taught(3), volts(3.1))!.readings).toHaveLength(1);
});

test('a unit that is kept was proved; one of a model of the folder teaches nothing', () => {
  expect(from('unit', volts(3), ['kept', { item_id: 'unit' }])!.is_proved).toBe(true);
  expect(from('other')).toBeNull();
});
