import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { KINDS, type ForeignEvent } from './events/index.ts';
import { emptyState, foldLog } from './fold/index.ts';
import { logLine } from './log-line.ts';
import { ALL_KINDS, oneOfEachKind } from './testing/any-event.ts';
import { oneLamp, testId, testLog, type Step } from './testing/events.ts';
import { smallModels } from './testing/small-model.ts';

const models = smallModels();

test('every kind of event has a plain sentence, on a bench that knows nothing of what it names', () => {
  expect(ALL_KINDS.toSorted()).toEqual(KINDS.toSorted());
  fc.assert(
    fc.property(oneOfEachKind(), (events) => {
      for (const event of events) {
        const { text } = logLine({ seq: 1, event }, emptyState(), models);
        expect(text, event.kind).toMatch(/^\S.*\S$/s);
        expect(text, event.kind).not.toMatch(/undefined|null|NaN|\[object|: \.|, \.| {2}/);
      }
    }),
    { numRuns: 50 },
  );
});

const lines = (...steps: readonly Step[]) => {
  const log = testLog(...steps);
  const state = foldLog(log, models);
  return log.map((stored) => logLine(stored, state, models));
};

test('sentences use the names of the person and of the model, and money with its currency', () => {
  const texts = lines(
    ...oneLamp,
    ['trial-done', { item_id: 'lamp-a', function: 'light', outcome: 'comes-and-goes', with: ['good-cell'], minutes: 3 }],
    ['reading-taken', { item_id: 'lamp-a', point: 'cell-v', mode: 'volts', value: null }],
    ['proof-step-done', { item_id: 'lamp-a', step: 'no-hot-spots', outcome: 'signed-off', reason: 'Runs cold by design.' }],
    ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }],
    ['sold', { item_id: 'board-a', as: 'for-parts', price_minor: 1250, currency: 'GBP', fees_minor: 150 }],
  ).map((line) => line.text);
  expect(texts).toEqual([
    'Bought "a faulty lamp" from marsh-lane for 24.00 GBP with postage and tax: #1 Lamp A.',
    'Received #1 Lamp A.',
    'Tried Light of #1 Lamp A with Known-good cell: comes and goes, 3 min.',
    'Measured Cell voltage of #1 Lamp A in volts: OL.',
    'Proof of #1 Lamp A, No hot spot after ten minutes: not passed, signed off: Runs cold by design.',
    'Moved #2 Board of Lamp A from #1 Lamp A to the drawer.',
    'Sold #2 Board of Lamp A for parts for 12.50 GBP; fees and postage 1.50 GBP.',
  ]);
});

test('a line says that its event was undone, and carries the photo that it is about', () => {
  const log = lines(...oneLamp, ['photo-taken', { item_id: 'lamp-a', photo: 'ab'.repeat(32) }], ['correction', { corrects: testId(3) }]);
  expect(log.map((line) => line.corrected)).toEqual([false, false, true, false]);
  expect(log[2]!.photo).toBe('ab'.repeat(32));
});

test('an event from a newer version is shown as such', () => {
  const event: ForeignEvent = {
    id: testId(1),
    at: '2026-01-01T00:00:00Z',
    device: 'phone',
    version: 9,
    kind: 'x-rayed',
    body: {},
    foreign: true,
  };
  expect(logLine({ seq: 1, event }, emptyState(), models)).toMatchObject({ foreign: true, kind: 'x-rayed', corrected: false });
});
