import { expect, test } from 'vitest';
import { modelIdFor, newModelDrafts } from './new-model.ts';

test('an id is made from the name, and from its letters alone', () => {
  const free = () => false;
  expect(modelIdFor('Corrie CP-4', free)).toBe('corrie-cp-4');
  expect(modelIdFor('  Émeraude №1! ', free)).toBe('emeraude-1');
  expect(modelIdFor('プレーヤー', free)).toBe('model');
  expect(modelIdFor('x'.repeat(300), free)).toHaveLength(48);
});

test('an id that is taken gets the first number that is free', () => {
  expect(modelIdFor('Lamp', (id) => ['lamp', 'lamp-2'].includes(id))).toBe('lamp-3');
  expect(modelIdFor('New', () => false)).toBe('new-2');
});

test('photos of the board come with the beginning', () => {
  const drafts = newModelDrafts('lamp', {
    name: 'Lamp',
    revision: '',
    currency: 'GBP',
    from: { copy_of: 'lamp-1' },
    photos: { back: 'ab' },
  });
  expect(drafts.map(({ kind, body }) => [kind, 'side' in body ? body.side : null])).toEqual([
    ['model-begun', null],
    ['model-photo-set', 'back'],
  ]);
});
