import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { modelsWithGrown } from '../grow/models-with-grown.ts';
import { oneLamp, testEvent, testId, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { REFUSED } from './testing/refusals.ts';
import { lotOf, move, sell, pass, trial, weigh, lampB, lamp2, boardOut } from './testing/steps.ts';
import { checkEvent, RULE_CODES, type RuleContext } from './index.ts';

const models = smallModels();

function objection(before: readonly Step[], [kind, body]: Step) {
  const log = testLog(...before);
  const state = foldLog(log, models);
  const context: RuleContext = {
    state,
    models: modelsWithGrown(models, () => state),
    proofSteps: (itemId) => {
      const steps = ['power', 'light'].map((id) => {
        const done = state.items.get(itemId)?.proof.get(id);
        const words = { name: `${id} works`, how: '', limits: [], because: [], measured: [], measured_by: [], cautions: [] };
        return { id, ...words, outcome: done?.outcome ?? ('open' as const), reason: done?.reason ?? '' };
      });
      return { steps, ready: steps.every((step) => step.outcome === 'pass' || step.outcome === 'signed-off') };
    },
    eventById: (id) => log.find(({ event }) => event.id === id)?.event,
  };
  return checkEvent(context, testEvent(log.length + 1, kind, body as never));
}

test.each(REFUSED)('refuses %s', (_title, before, event, code, field, message) => {
  expect(objection(before, event)).toMatchObject({ code, field, message: expect.stringMatching(message) });
});

test('every code of a refusal is met by a test', () => {
  expect(new Set(REFUSED.map(([, , , code]) => code))).toEqual(new Set(RULE_CODES));
});

const ALLOWED: readonly [title: string, before: readonly Step[], event: Step][] = [
  ['a trial before the parcel was received', [oneLamp[0]], trial({ with: ['good-cell'] })],
  [
    'a note, a photo and time on what was sold',
    [...oneLamp, sell('lamp-a')],
    ['photo-taken', { item_id: 'lamp-a', photo: 'ab'.repeat(32) }],
  ],
  ['a foreign price with its rate', [], lotOf('l', [{ item_id: 'x' }], { currency: 'JPY', rate: 0.0051 })],
  ['the same currency again once money was booked', oneLamp, ['bench-set', { currency: 'GBP' }]],
  [
    'selling as working once all steps passed or were signed off',
    [
      ...oneLamp,
      pass('power'),
      ['proof-step-done', { item_id: 'lamp-a', step: 'light', outcome: 'signed-off', reason: 'sold without a bulb' }],
    ],
    sell('lamp-a', { as: 'working' }),
  ],
  ['a unit for parts without any proof', oneLamp, ['graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'parts' }]],
  ['a loose assembly as working, which cannot be proved by itself', [...oneLamp, boardOut], sell('board-a', { as: 'working' })],
  ['the board of a model that the slot lists as fitting', [...oneLamp, lamp2, boardOut], move('b2', 'board', 'lamp-2a', 'lamp-a')],
  ['names of a lot that was undone', [lampB, ['correction', { corrects: testId(1) }]], lampB],
  ['weighing a listing again', [weigh()], weigh({ price_minor: 2 })],
  ['putting the demo away where there is none', [], ['demo-put-away', {}]],
];

test.each(ALLOWED)('takes %s', (_title, before, event) => {
  expect(objection(before, event)).toBeNull();
});
