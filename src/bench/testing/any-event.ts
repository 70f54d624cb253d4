import * as fc from 'fast-check';
import {
  FindingKind,
  MeterMode,
  Outcome,
  STAGES,
  TestName,
  TestVerdict,
  type BenchEvent,
  type Kind,
  type Stored,
} from '../events/index.ts';
import { anyGrowing } from './any-growing.ts';
import { testEvent, testId, type BodyInput } from './events.ts';

/** Random bodies for every kind, over so few names that they meet each other, the wrong ones and the unknown ones. */

const oneOf = <T>(...values: readonly T[]) => fc.constantFrom(...values);
const units = oneOf('lamp-a', 'lamp-b', 'lamp-c');
const assemblies = oneOf('part-a', 'part-b', 'part-c');
const items = fc.oneof({ weight: 5, arbitrary: units }, { weight: 2, arbitrary: assemblies });
const bags = oneOf('bag-1', 'bulb-3v');
const parts = oneOf('bulb-3v', 'wire');
const orders = oneOf('order-1', 'order-2');
const listings = oneOf('listing-1', 'listing-2');
const slots = oneOf('battery', 'board');
const blocks = oneOf('cell', 'switch', 'driver', 'bulb', 'battery');
const functions = oneOf('power', 'light');
const models = oneOf('lamp-1', 'lamp-1', 'lamp-2', 'lamp-9', 'unheard-of');
const cost = fc.oneof({ weight: 20, arbitrary: fc.integer({ min: 0, max: 9999 }) }, { weight: 1, arbitrary: oneOf(0, 1, 10 ** 12) });
const minutes = fc.integer({ min: 0, max: 90 });
const count = fc.integer({ min: 1, max: 7 });
const foreignMoney = { currency: oneOf('GBP', 'GBP', 'EUR', 'JPY', 'KWD'), rate: oneOf(1, 0.8437, 0.0051, 2.5, 0.33, 7.77, 1e200) };
const text = oneOf('', 'a word');
const line = oneOf('first', 'second');
const claim = fc.oneof(
  fc.record({ about: fc.constant('function' as const), function: functions, says: oneOf(...Outcome.options) }),
  fc.record({ about: fc.constant('place' as const), place: blocks, sees: oneOf(...FindingKind.options) }),
  fc.constant({ about: 'untested' as const }),
);
const pattern = oneOf({ name: 'two feet', pads: [{ pin: '1', x_mm: 0, y_mm: 0, w_mm: 1, h_mm: 1 }] });
const nullable = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 3 });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });
const lotItem = fc.record({
  item_id: items,
  name: line,
  kind: oneOf('unit' as const, 'unit' as const, 'assembly' as const),
  model_id: models,
  slot: maybe(slots),
  expected_value_minor: cost,
});

const ANY_BODY: { readonly [K in Kind]: fc.Arbitrary<BodyInput<K>> } = {
  'bench-set': fc.record({ name: maybe(line), currency: maybe(oneOf('GBP', 'EUR')), hour_value_minor: maybe(cost) }),
  'listing-weighed': fc.record({
    listing_id: listings,
    title: line,
    seller: line,
    model_id: models,
    price_minor: cost,
    claims: fc.array(claim, { maxLength: 3 }),
    ...foreignMoney,
  }),
  'listing-dropped': fc.record({ listing_id: listings, reason: line }),
  'lot-bought': fc.record({
    lot_id: oneOf('lot-1', 'lot-2', 'lot-3', 'lot-4'),
    listing_id: maybe(listings),
    title: line,
    seller: line,
    price_minor: cost,
    postage_minor: cost,
    tax_minor: cost,
    items: fc.array(lotItem, { minLength: 1, maxLength: 3 }),
    ...foreignMoney,
  }),
  'item-received': fc.record({ item_id: items, condition: text }),
  'claim-made': fc.record({ item_id: items, claim }),
  'trial-done': fc.record({ item_id: items, function: functions, outcome: oneOf(...Outcome.options), minutes }),
  'photo-taken': fc.record({ item_id: items, photo: fc.constant('ab'.repeat(32)) }),
  'finding-noted': fc.record({ item_id: items, place: blocks, sees: oneOf(...FindingKind.options, 'missing' as const) }),
  'reading-taken': fc.record({
    item_id: items,
    point: oneOf('cell-v', 'nowhere'),
    mode: oneOf(...MeterMode.options),
    value: nullable(fc.double({ min: 0, max: 9, noNaN: true })),
  }),
  'step-done': fc.record({ item_id: items, step: oneOf('open-lamp', 'board'), way: oneOf('in' as const, 'back' as const), minutes }),
  'fasteners-counted': fc.record({
    item_id: items,
    fasteners: oneOf('screws', 'clips'),
    way: oneOf('out' as const, 'back' as const),
    count: fc.nat({ max: 9 }),
    foreign: oneOf(0, 1),
  }),
  'opened-to': fc.record({ item_id: items, stage: oneOf(...STAGES) }),
  'remedy-done': fc.record({
    item_id: items,
    remedy: oneOf('clean-switch', 'new-bulb', 'other-board'),
    minutes,
    outcome: oneOf('mended' as const, 'not-mended' as const, 'made-worse' as const, 'not-tried-yet' as const),
  }),
  'transplant-done': fc.record({
    assembly_id: fc.oneof({ weight: 9, arbitrary: assemblies }, { weight: 1, arbitrary: units }),
    slot: slots,
    from_item: nullable(units),
    to_item: nullable(units),
    cost_share: maybe(oneOf(0, 0.25, 1)),
  }),
  'part-bought': fc.record({ bag_id: bags, part: parts, name: line, count, price_minor: cost, pattern: maybe(pattern), ...foreignMoney }),
  'bag-set': fc.record({ bag_id: bags, place: maybe(text), pattern: maybe(nullable(pattern)) }),
  'part-used': fc.record({ bag_id: bags, item_id: items, count }),
  'order-placed': fc.record({
    order_id: orders,
    supplier: line,
    lines: fc.array(fc.record({ part: parts, name: line, count, price_minor: cost }), { minLength: 1, maxLength: 3 }),
    postage_minor: cost,
    ...foreignMoney,
  }),
  'order-arrived': fc.record({
    order_id: orders,
    place: text,
    counts: maybe(fc.array(fc.integer({ min: 0, max: 7 }), { minLength: 1, maxLength: 3 })),
  }),
  'order-cancelled': fc.record({ order_id: orders, refund_minor: fc.integer({ min: 0, max: 99 }) }),
  'proof-step-done': fc.record({
    item_id: items,
    step: functions,
    outcome: oneOf('pass' as const, 'pass' as const, 'fail' as const, 'signed-off' as const),
  }),
  'test-done': fc.record({
    item_id: items,
    test: oneOf(...TestName.options),
    verdict: oneOf(...TestVerdict.options),
    values: fc.constantFrom([], [{ name: 'Quieter', value: 1.5, unit: 'dB', criterion: 'sound' as const }]),
    known_good: fc.boolean(),
    minutes,
  }),
  graded: fc.record({ item_id: items, scale: fc.constant('salvor-1' as const), grade: oneOf('A' as const, 'parts' as const) }),
  listed: fc.record({ item_id: items, price_minor: cost, place: line }),
  sold: fc.record({
    item_id: items,
    as: oneOf('working' as const, 'for-parts' as const),
    price_minor: cost,
    postage_charged_minor: cost,
    fees_minor: cost,
    postage_minor: cost,
    ...foreignMoney,
  }),
  returned: fc.record({ item_id: items, refund_minor: cost, fees_back_minor: cost, postage_minor: cost }),
  scrapped: fc.record({ item_id: items, reason: line }),
  kept: fc.record({ item_id: items }),
  'sale-seen': fc.record({
    sale_id: oneOf('sale-1', 'sale-2'),
    model_id: models,
    day: oneOf('2026-01-02', '2026-02-03'),
    price_minor: fc.integer({ min: 1, max: 9999 }),
    condition: oneOf('A' as const, 'C' as const, 'parts' as const),
    ...foreignMoney,
  }),
  'fees-set': fc.record({
    place: line,
    from_day: oneOf('2026-01-02', '2026-02-03'),
    bands: fc.array(fc.record({ up_to_minor: nullable(cost), percent: fc.integer({ min: 0, max: 20 }) }), { minLength: 1, maxLength: 3 }),
    fixed_minor: cost,
  }),
  'postage-set': fc.record({
    from_day: fc.constant('2026-01-02'),
    bands: fc.constant([
      { up_to_g: 500, price_minor: 300 },
      { up_to_g: 2000, price_minor: 700 },
    ]),
  }),
  'tax-rule-set': fc.record({
    rule: oneOf('margin-each' as const, 'small-trader' as const),
    from_day: fc.constant('2026-01-02'),
    on: fc.boolean(),
    rate_percent: oneOf(0, 20),
  }),
  'sale-text-set': fc.record({ template: line }),
  'learning-set': fc.record({ half_life_days: nullable(fc.integer({ min: 1, max: 900 })) }),
  'learned-reset': fc.record({ about: oneOf('remedy.lamp-1.new-bulb', 'nothing'), reason: text }),
  'plan-set': fc.record({
    hours_a_week: maybe(fc.integer({ min: 0, max: 60 })),
    money_minor: maybe(cost),
    risk_share: maybe(oneOf(0, 0.5, 1)),
  }),
  'plan-chosen': fc.oneof(
    fc.record({ item_id: items, does: oneOf('open' as const, 'as-is' as const, 'keep' as const, 'as-planned' as const), reason: text }),
    fc.record({ item_id: items, slot: slots, remedy: oneOf('clean', 'clean+swap-bulb', null), regret_minor: cost }),
  ),
  'supplier-set': fc.record({
    supplier: line,
    postage_minor: cost,
    days: fc.integer({ min: 0, max: 60 }),
    offers: fc.array(fc.record({ part: parts, unit_minor: cost, least: count }), { maxLength: 3 }),
    ...foreignMoney,
  }),
  'learned-taken-in': fc.record({
    model_id: oneOf('lamp-1', 'lamp-9'),
    from: oneOf('a friend', 'the next bench'),
    weight: oneOf(0.5, 1),
    numbers: fc.constant([{ about: 'fault-rate' as const, of: 'bulb-open', mean: 0.4, spread: 0, jobs: 10 }]),
  }),
  'words-taught': fc.record({
    words: oneOf('goes pfft', 'Lamp of honour'),
    claim: oneOf(null, { about: 'untested' as const }, { about: 'function' as const, function: 'light', says: 'fails' as const }),
  }),
  ...anyGrowing(items),
  'reference-set': fc.record({
    model_id: models,
    side: oneOf('board-front' as const, 'board-back' as const),
    photo: oneOf('ab'.repeat(32), 'shipped'),
    use: fc.boolean(),
    corners: maybe(
      fc.constant([
        [0.1, 0.7] as [number, number],
        [0.9, 0.7] as [number, number],
        [0.9, 0.1] as [number, number],
        [0.1, 0.1] as [number, number],
      ]),
    ),
  }),
  'difference-judged': fc.record({
    item_id: items,
    side: oneOf('board-front' as const, 'board-back' as const),
    photo: fc.constant('ab'.repeat(32)),
    outline: fc.constant([[0.1, 0.1] as [number, number], [0.2, 0.1] as [number, number], [0.2, 0.2] as [number, number]]),
    shows: oneOf('missing' as const, 'stain' as const),
    verdict: oneOf('real' as const, 'normal' as const, 'not-sure' as const),
    chance: maybe(oneOf(0.5, 0.9)),
    part: maybe(oneOf('R1', 'U1')),
    text,
  }),
  'note-written': fc.record({ item_id: maybe(items), text: line }),
  'time-clocked': fc.record({ item_id: maybe(items), minutes, task: line }),
  'advice-declined': fc.record({ item_id: items, advice: line }),
  correction: fc.record({ corrects: fc.integer({ min: 1, max: 60 }).map(testId) }),
  'demo-put-away': fc.constant({}),
};

export const ALL_KINDS = Object.keys(ANY_BODY) as readonly Kind[];

/** Kinds that move things and money come up more often than the rest; putting the demo away comes up less. */
const OFTEN: Partial<Record<Kind, number>> = { 'transplant-done': 12, 'part-used': 5, sold: 4, returned: 5, correction: 2, scrapped: 1 };
const weightOf = (kind: Kind): number => (kind === 'demo-put-away' ? 1 : 2 + 4 * (OFTEN[kind] ?? 0));
const device = oneOf('bench-1', 'bench-1', 'bench-1', 'phone', 'demo');

interface Step {
  readonly kind: Kind;
  readonly body: never;
  readonly device: string;
}

const step = (kind: Kind, body: fc.Arbitrary<unknown>): fc.Arbitrary<Step> =>
  fc.record({ kind: fc.constant(kind), body: body as fc.Arbitrary<never>, device });

const anyStep = (kinds: readonly Kind[]): fc.Arbitrary<Step> =>
  fc.oneof(...kinds.map((kind) => ({ weight: weightOf(kind), arbitrary: step(kind, ANY_BODY[kind]) })));

/** What most logs start with, so that the rest has something to meet: three units, a loose board and two bags. */
const opening = fc.tuple(
  ...['lamp-a', 'lamp-b', 'lamp-c'].map((id, index) =>
    step(
      'lot-bought',
      fc.record({
        lot_id: fc.constant(`lot-${index + 1}`),
        title: line,
        seller: line,
        price_minor: fc.integer({ min: 0, max: 9999 }),
        currency: fc.constant('GBP'),
        items: fc.tuple(
          fc.record({ item_id: fc.constant(id), name: line, model_id: oneOf('lamp-1', 'lamp-2'), expected_value_minor: cost }),
          fc.record({
            item_id: fc.constant(['part-c', 'spare-1', 'spare-2'][index]),
            name: line,
            kind: fc.constant('assembly'),
            slot: slots,
            model_id: models,
            expected_value_minor: cost,
          }),
        ),
      }),
    ),
  ),
  step(
    'part-bought',
    fc.record({ bag_id: fc.constant('bag-1'), part: parts, name: line, count, price_minor: cost, currency: fc.constant('GBP') }),
  ),
);

/** A random log of valid events, most of it nonsense as a story; `kinds` narrows the choice. */
export const anyLog = (kinds: readonly Kind[] = ALL_KINDS): fc.Arbitrary<Stored[]> =>
  fc
    .tuple(fc.option(opening, { nil: [], freq: 9 }), fc.array(anyStep(kinds), { maxLength: 60, size: 'max' }))
    .map(([first, rest]) =>
      [...first, ...rest].map(({ kind, body, device: by }, index) => ({ seq: index + 1, event: testEvent(index + 1, kind, body, by) })),
    );

/** One random event of each kind, in the order of the kinds. */
export const oneOfEachKind = (): fc.Arbitrary<BenchEvent[]> =>
  fc.tuple(...ALL_KINDS.map((kind, index) => (ANY_BODY[kind] as fc.Arbitrary<never>).map((body) => testEvent(index + 1, kind, body))));
