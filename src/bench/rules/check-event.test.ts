import { expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { oneLamp, testEvent, testId, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { checkEvent, RULE_CODES, type RuleContext } from './index.ts';

const models = smallModels();
const GBP = { currency: 'GBP' };

function objection(before: readonly Step[], [kind, body]: Step) {
  const log = testLog(...before);
  const state = foldLog(log, models);
  const context: RuleContext = {
    state,
    models,
    proofSteps: (itemId) => {
      const steps = ['power', 'light'].map((id) => {
        const done = state.items.get(itemId)?.proof.get(id);
        return { id, name: `${id} works`, how: '', outcome: done?.outcome ?? ('open' as const), reason: done?.reason ?? '', cautions: [] };
      });
      return { steps, ready: steps.every((step) => step.outcome === 'pass' || step.outcome === 'signed-off') };
    },
    eventById: (id) => log.find(({ event }) => event.id === id)?.event,
  };
  return checkEvent(context, testEvent(log.length + 1, kind, body as never));
}

const lotOf = (lot_id: string, items: readonly object[], more: object = {}): Step => [
  'lot-bought',
  {
    lot_id,
    title: 't',
    seller: 's',
    price_minor: 900,
    ...GBP,
    items: items.map((item) => ({ name: 'n', model_id: 'lamp-1', expected_value_minor: 1, ...item })),
    ...more,
  },
];
const move = (assembly_id: string, slot: string, from_item: string | null, to_item: string | null): Step => [
  'transplant-done',
  { assembly_id, slot, from_item, to_item },
];
const sell = (item_id: string, more: object = {}): Step => ['sold', { item_id, as: 'for-parts', price_minor: 900, ...GBP, ...more }];
const pass = (step: string): Step => ['proof-step-done', { item_id: 'lamp-a', step, outcome: 'pass' }];
const trial = (more: object = {}): Step => ['trial-done', { item_id: 'lamp-a', function: 'light', outcome: 'fails', ...more }];
const weigh = (more: object = {}): Step => [
  'listing-weighed',
  { listing_id: 'l-1', title: 't', seller: 's', model_id: 'lamp-1', price_minor: 1, ...GBP, ...more },
];
const buyPart = (more: object = {}): Step => [
  'part-bought',
  { bag_id: 'bag', part: 'bulb-3v', name: 'Bulb', count: 2, price_minor: 90, ...GBP, ...more },
];
const order: Step = [
  'order-placed',
  { order_id: 'o-1', supplier: 's', lines: [{ part: 'wire', name: 'w', count: 1, price_minor: 5 }], ...GBP },
];
const lampB = lotOf('lot-2', [{ item_id: 'lamp-b' }]);
const lamp9 = lotOf('lot-9', [{ item_id: 'lamp-9a', model_id: 'lamp-9' }]);
const lamp2 = lotOf('lot-8', [{ item_id: 'lamp-2a', model_id: 'lamp-2' }]);
const boardOut = move('board-a', 'board', 'lamp-a', null);
const scrap: Step = ['scrapped', { item_id: 'lamp-a', reason: 'burnt' }];

const REFUSED: readonly [title: string, before: readonly Step[], event: Step, code: string, field: string, message: RegExp][] = [
  ['an unknown item', oneLamp, trial({ item_id: 'lamp-z' }), 'unknown-item', 'body.item_id', /no item "lamp-z"; there are lamp-a/],
  [
    'an unknown function',
    oneLamp,
    trial({ function: 'lite' }),
    'unknown-function',
    'body.function',
    /no function "lite"; it has light, power/,
  ],
  ['an unknown accessory', oneLamp, trial({ with: ['good-cell', 'crystal'] }), 'unknown-accessory', 'body.with.1', /it has good-cell/],
  [
    'an unknown point',
    oneLamp,
    ['reading-taken', { item_id: 'lamp-a', point: 'tp9', mode: 'volts', value: 1 }],
    'unknown-point',
    'body.point',
    /it has cell-v/,
  ],
  [
    'a reading of another kind than the point is for',
    oneLamp,
    ['reading-taken', { item_id: 'lamp-a', point: 'cell-v', mode: 'ohms', value: 1 }],
    'wrong-mode',
    'body.mode',
    /measured in volts/,
  ],
  [
    'an unknown remedy',
    oneLamp,
    ['remedy-done', { item_id: 'lamp-a', remedy: 'pray', minutes: 1, outcome: 'mended' }],
    'unknown-remedy',
    'body.remedy',
    /clean-switch/,
  ],
  [
    'a claim about an unknown function',
    oneLamp,
    ['claim-made', { item_id: 'lamp-a', claim: { about: 'function', function: 'radio', says: 'works' } }],
    'unknown-function',
    'body.claim.function',
    /radio/,
  ],
  [
    'an unknown model in a listing',
    [],
    weigh({ model_id: 'lamp-7' }),
    'unknown-model',
    'body.model_id',
    /there are lamp-1, lamp-2, lamp-9/,
  ],
  [
    'an unknown function in a listing',
    [],
    weigh({ claims: [{ about: 'untested' }, { about: 'function', function: 'radio', says: 'works' }] }),
    'unknown-function',
    'body.claims.1.function',
    /radio/,
  ],
  [
    'dropping an unknown listing',
    [],
    ['listing-dropped', { listing_id: 'l-9', reason: 'r' }],
    'unknown-listing',
    'body.listing_id',
    /none yet/,
  ],
  [
    'weighing a listing that was bought',
    [weigh(), lotOf('lot-1', [{ item_id: 'lamp-a' }], { listing_id: 'l-1' })],
    weigh(),
    'listing-closed',
    'body.listing_id',
    /bought already/,
  ],
  ['a lot of an unknown model', [], lotOf('lot-1', [{ item_id: 'x', model_id: 'y' }]), 'unknown-model', 'body.items.0.model_id', /"y"/],
  ['a second lot of one name', oneLamp, lotOf('lot-1', [{ item_id: 'x' }]), 'id-taken', 'body.lot_id', /lot is called "lot-1"/],
  ['a second item of one name', oneLamp, lotOf('lot-2', [{ item_id: 'lamp-a' }]), 'id-taken', 'body.items.0.item_id', /"lamp-a"/],
  ['one name twice in a lot', [], lotOf('lot-2', [{ item_id: 'x' }, { item_id: 'x' }]), 'id-taken', 'body.items.1.item_id', /"x"/],
  [
    'a name of the demo that was put away',
    [[lampB[0], lampB[1], 'demo'], ['demo-put-away', {}]],
    lotOf('lot-3', [{ item_id: 'lamp-b' }]),
    'id-taken',
    'body.items.0.item_id',
    /lamp-b/,
  ],
  [
    'an assembly without its slot',
    [],
    lotOf('lot-1', [{ item_id: 'x', kind: 'assembly' }]),
    'slot-missing',
    'body.items.0.slot',
    /battery, board/,
  ],
  [
    'an assembly for an unknown slot',
    [],
    lotOf('lot-1', [{ item_id: 'x', kind: 'assembly', slot: 'lid' }]),
    'unknown-slot',
    'body.items.0.slot',
    /no slot "lid"/,
  ],
  ['a rate for the own currency', [], lotOf('l', [{ item_id: 'x' }], { rate: 1.1 }), 'rate-not-one', 'body.rate', /kept in GBP/],
  [
    'no rate for another currency',
    [],
    lotOf('l', [{ item_id: 'x' }], { currency: 'JPY' }),
    'rate-missing',
    'body.rate',
    /how many GBP one JPY/,
  ],
  [
    'an amount past what the books take',
    [],
    lotOf('l', [{ item_id: 'x' }], { currency: 'EUR', rate: 1e12 }),
    'amount-too-large',
    'body.price_minor',
    /10000000000\.00 GBP/,
  ],
  ['another currency once money was booked', oneLamp, ['bench-set', { currency: 'EUR' }], 'currency-fixed', 'body.currency', /stay in GBP/],
  [
    'work on what was sold',
    [...oneLamp, sell('lamp-a')],
    trial(),
    'item-gone',
    'body.item_id',
    /#1 Lamp A \(lamp-a\) is sold; record its return/,
  ],
  ['selling what was sold', [...oneLamp, sell('lamp-a')], sell('lamp-a'), 'item-gone', 'body.item_id', /is sold/],
  ['selling what was scrapped', [...oneLamp, scrap], sell('lamp-a'), 'item-gone', 'body.item_id', /is scrapped; undo/],
  [
    'a return of what was not sold',
    oneLamp,
    ['returned', { item_id: 'lamp-a', refund_minor: 1 }],
    'not-sold',
    'body.item_id',
    /was not sold/,
  ],
  [
    'a return of what left inside a unit',
    [...oneLamp, boardOut, move('board-a', 'board', null, 'lamp-a'), sell('lamp-a')],
    ['returned', { item_id: 'board-a', refund_minor: 1 }],
    'not-sold',
    'body.item_id',
    /left with the unit/,
  ],
  [
    'listing an assembly that sits in a unit',
    [...oneLamp, boardOut, move('board-a', 'board', null, 'lamp-a')],
    ['listed', { item_id: 'board-a', price_minor: 1, place: 'p' }],
    'still-inside',
    'body.item_id',
    /sits in #1 Lamp A/,
  ],
  [
    'selling as working without proof',
    [...oneLamp, pass('power')],
    sell('lamp-a', { as: 'working' }),
    'proof-incomplete',
    'body.as',
    /: light works \(light\);/,
  ],
  [
    'selling as working after a failed step',
    [...oneLamp, pass('power'), ['proof-step-done', { item_id: 'lamp-a', step: 'light', outcome: 'fail' }]],
    sell('lamp-a', { as: 'working' }),
    'proof-incomplete',
    'body.as',
    /light, failed/,
  ],
  [
    'a grade before the proof',
    oneLamp,
    ['graded', { item_id: 'lamp-a', scale: 'salvor-1', grade: 'B' }],
    'proof-incomplete',
    'body.grade',
    /power works \(power\), light works \(light\)/,
  ],
  [
    'a sign-off without a reason',
    oneLamp,
    ['proof-step-done', { item_id: 'lamp-a', step: 'power', outcome: 'signed-off' }],
    'reason-missing',
    'body.reason',
    /needs a reason/,
  ],
  [
    'an unknown step of the proof',
    oneLamp,
    ['proof-step-done', { item_id: 'lamp-a', step: 'swim', outcome: 'pass' }],
    'unknown-step',
    'body.step',
    /its steps are power, light/,
  ],
  [
    'a part from an unknown bag',
    oneLamp,
    ['part-used', { bag_id: 'bag', item_id: 'lamp-a', count: 1 }],
    'unknown-bag',
    'body.bag_id',
    /none yet/,
  ],
  [
    'more parts than the bag holds',
    [...oneLamp, buyPart()],
    ['part-used', { bag_id: 'bag', item_id: 'lamp-a', count: 3 }],
    'not-enough-parts',
    'body.count',
    /holds 2 of Bulb, not 3/,
  ],
  ['another part into a bag', [buyPart()], buyPart({ part: 'wire' }), 'id-taken', 'body.bag_id', /holds Bulb/],
  ['a part of an unknown order', [], buyPart({ order_id: 'o-9' }), 'unknown-order', 'body.order_id', /o-9/],
  ['a second order of one name', [order], order, 'id-taken', 'body.order_id', /o-1/],
  ['the arrival of an unknown order', [order], ['order-arrived', { order_id: 'o-2' }], 'unknown-order', 'body.order_id', /there are o-1/],
  [
    'a second arrival',
    [order, ['order-arrived', { order_id: 'o-1' }]],
    ['order-arrived', { order_id: 'o-1' }],
    'already-arrived',
    'body.order_id',
    /has arrived/,
  ],
  [
    'a move from nowhere to nowhere',
    [...oneLamp, boardOut],
    move('board-a', 'board', null, null),
    'nothing-moves',
    'body.to_item',
    /where it goes/,
  ],
  ['a move out of an unknown unit', oneLamp, move('b', 'board', 'lamp-z', null), 'unknown-item', 'body.from_item', /lamp-z/],
  [
    'a move of an unknown assembly out of the drawer',
    oneLamp,
    move('b', 'board', null, 'lamp-a'),
    'unknown-item',
    'body.assembly_id',
    /"b"/,
  ],
  [
    'a move into an assembly',
    [...oneLamp, lampB, boardOut],
    move('b', 'board', 'lamp-b', 'board-a'),
    'not-a-unit',
    'body.to_item',
    /is an assembly/,
  ],
  [
    'a move of a whole unit',
    [...oneLamp, lampB],
    move('lamp-b', 'board', null, 'lamp-a'),
    'not-an-assembly',
    'body.assembly_id',
    /whole unit/,
  ],
  ['a move out of an unknown slot', oneLamp, move('b', 'lid', 'lamp-a', null), 'unknown-slot', 'body.slot', /no slot "lid"; it has/],
  [
    'taking out what is out already',
    [...oneLamp, boardOut],
    move('b2', 'board', 'lamp-a', null),
    'slot-empty',
    'body.slot',
    /is out already/,
  ],
  [
    'a new name for an assembly that has one',
    [...oneLamp, boardOut, move('board-a', 'board', null, 'lamp-a')],
    move('b2', 'board', 'lamp-a', null),
    'not-there',
    'body.assembly_id',
    /is #2 Board of Lamp A \(board-a\); name that one/,
  ],
  [
    'an assembly that lies elsewhere',
    [...oneLamp, lampB, boardOut],
    move('board-a', 'board', 'lamp-b', null),
    'not-there',
    'body.from_item',
    /in the drawer/,
  ],
  [
    'a slot that is not free',
    [...oneLamp, lampB],
    move('b', 'board', 'lamp-b', 'lamp-a'),
    'slot-occupied',
    'body.to_item',
    /holds its own; take that out/,
  ],
  [
    'another slot than the assembly is made for',
    [...oneLamp, lampB, boardOut],
    move('board-a', 'battery', null, 'lamp-b'),
    'does-not-fit',
    'body.slot',
    /made for the slot "board"/,
  ],
  [
    'an assembly of a model that does not fit',
    [...oneLamp, lamp9, boardOut],
    move('b9', 'board', 'lamp-9a', 'lamp-a'),
    'does-not-fit',
    'body.to_item',
    /takes those of lamp-1, lamp-2/,
  ],
  ['undoing what is not in the log', oneLamp, ['correction', { corrects: testId(99) }], 'unknown-event', 'body.corrects', /no event/],
  [
    'undoing what was undone',
    [...oneLamp, ['correction', { corrects: testId(2) }]],
    ['correction', { corrects: testId(2) }],
    'already-corrected',
    'body.corrects',
    /undone already/,
  ],
  [
    'bringing back a lot whose names were given anew',
    [lampB, ['correction', { corrects: testId(1) }], lotOf('lot-3', [{ item_id: 'lamp-b' }])],
    ['correction', { corrects: testId(2) }],
    'id-taken',
    'body.corrects',
    /"lamp-b"/,
  ],
];

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
