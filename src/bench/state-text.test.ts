import { expect, test } from 'vitest';
import { emptyState, foldLog } from './fold/index.ts';
import { stateText } from './state-text.ts';
import { oneLamp, testLog } from './testing/events.ts';
import { smallModels } from './testing/small-model.ts';

const models = smallModels();

test('does not depend on the order in which things were put into the state', () => {
  const [a, b] = [emptyState(), emptyState()];
  for (const id of ['x', 'y']) a.numbers.set(id, 1);
  for (const id of ['y', 'x']) b.numbers.set(id, 1);
  const { seq, ...rest } = b;
  expect(stateText({ ...rest, seq })).toBe(stateText(a));
});

test('differs as soon as anything differs, however deep', () => {
  const state = foldLog(testLog(...oneLamp), models);
  const before = stateText(state);
  state.items.get('lamp-a')!.slots.set('board', null);
  expect(stateText(state)).not.toBe(before);
});

test('keeps the order where order means something', () => {
  const log = testLog(...oneLamp, ['time-clocked', { minutes: 1, task: 'a' }]);
  const state = foldLog(log, models);
  const turned = { ...state, journal: state.journal.toReversed() };
  expect(stateText(turned)).not.toBe(stateText(state));
});
