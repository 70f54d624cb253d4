import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { fitsSeen } from './fits-seen.ts';
import { modelsWithGrown } from './models-with-grown.ts';

const shelf = smallModels();
const unit = (item_id: string, model_id: string) => ({ item_id, name: item_id, model_id, expected_value_minor: 1 });
const start: Step[] = [
  ['model-begun', { model_id: 'lamp-g', name: 'Grown lamp', currency: 'GBP', from: { copy_of: 'lamp-1' } }],
  [
    'lot-bought',
    { lot_id: 'l', title: 't', seller: 's', price_minor: 100, currency: 'GBP', items: [unit('mine', 'lamp-g'), unit('donor', 'lamp-9')] },
  ],
];
const tried = (outcome: 'fits' | 'bent' | 'does-not-fit', what: { part: string } | { other_model_id: string }): Step => [
  'model-fit-seen',
  { model_id: 'lamp-g', slot: 'board', outcome, ...what },
];
const move = (from_item: string | null, to_item: string | null): Step => [
  'transplant-done',
  { assembly_id: 'board-d', slot: 'board', from_item, to_item },
];

function boardLines(...steps: Step[]) {
  const state = foldLog(testLog(...start, ...steps), shelf);
  const models = modelsWithGrown(shelf, () => state);
  const { slots } = fitsSeen(state, models.get('lamp-g')!, (id) => models.get(id)?.file.name ?? id);
  return slots.find(({ slot }) => slot === 'board')!.lines.map(({ name, said, fits, bent, fails }) => [name, said, fits, bent, fails]);
}

test('what the file says stands there before anything was tried', () => {
  expect(boardLines()).toEqual([['Pocket lamp, later', true, 0, 0, 0]]);
});

test('what was tried is counted by part and by model, what went in most often first and what failed last', () => {
  expect(
    boardLines(
      tried('fits', { part: 'Five-pin socket' }),
      tried('bent', { part: 'five-pin socket' }),
      tried('does-not-fit', { part: 'Four-pin socket' }),
      tried('does-not-fit', { other_model_id: 'lamp-2' }),
    ),
  ).toEqual([
    ['Five-pin socket', false, 1, 1, 0],
    ['Pocket lamp, later', true, 0, 0, 1],
    ['Four-pin socket', false, 0, 0, 1],
  ]);
});

test('an assembly of another model counts while it sits in a unit of this one', () => {
  const own = move('mine', null);
  const inside: Step[] = [
    ['transplant-done', { assembly_id: 'board-m', slot: 'board', from_item: 'mine', to_item: null }],
    move('donor', 'mine'),
  ];
  expect(boardLines(...inside)[0]).toEqual(['Hand lamp', false, 1, 0, 0]);
  expect(boardLines(...inside, move('mine', null))).toEqual([['Pocket lamp, later', true, 0, 0, 0]]);
  expect(boardLines(own)).toEqual([['Pocket lamp, later', true, 0, 0, 0]]);
});
