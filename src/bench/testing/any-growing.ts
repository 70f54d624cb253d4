import * as fc from 'fast-check';
import type { Kind } from '../events/index.ts';
import type { BodyInput } from './events.ts';

type GrowKind = Extract<Kind, `model-${string}`>;
type AnyBodies = { readonly [K in GrowKind]: fc.Arbitrary<BodyInput<K>> };

const oneOf = <T>(...values: readonly T[]) => fc.constantFrom(...values);
const model_id = oneOf('lamp-g', 'lamp-g', 'lamp-h', 'lamp-1');
const pins = oneOf('R1.1', 'R1.2', 'U1.3');
const refs = oneOf('R1', 'U1', 'TP1');
const photo = fc.constant('cd'.repeat(32));

/** Random bodies for the kinds from which models grow, over few names as the others. */
export const anyGrowing = (items: fc.Arbitrary<string>): AnyBodies => ({
  'model-begun': fc.record({
    model_id,
    name: oneOf('Grown lamp', 'Other lamp'),
    currency: fc.constant('GBP'),
    from: oneOf({ copy_of: 'lamp-1' }, { copy_of: 'lamp-g' }, { copy_of: 'unheard-of' }),
  }),
  'model-fact-set': fc.oneof(
    fc.record({
      model_id,
      section: fc.constant('head' as const),
      id: oneOf('about', 'unknown_rate'),
      value: oneOf<string | number | null>('good', 0.1, null),
    }),
    fc.record({
      model_id,
      section: oneOf('faults' as const, 'blocks' as const),
      id: oneOf('bulb-open', 'bulb'),
      field: oneOf('rate', 'name'),
      value: oneOf<string | number | null>(0.2, 'x', null),
    }),
  ),
  'model-photo-set': fc.record({ model_id, side: oneOf('front' as const, 'back' as const), photo }),
  'model-parts-placed': fc.record({
    model_id,
    parts: fc.array(
      fc.record({
        ref: refs,
        kind: oneOf('resistor' as const, 'chip' as const),
        side: fc.constant('front' as const),
        x_mm: oneOf(1, 2),
        y_mm: oneOf(1, 2),
      }),
      {
        minLength: 1,
        maxLength: 2,
      },
    ),
  }),
  'model-parts-removed': fc.record({ model_id, refs: fc.array(refs, { minLength: 1, maxLength: 2 }) }),
  'model-pins-joined': fc.record({ model_id, pins: fc.array(pins, { minLength: 2, maxLength: 3 }), joined: fc.boolean() }),
  'model-net-named': fc.record({ model_id, pin: pins, name: oneOf('0', '3v3') }),
  'model-netlist-set': fc.record({ model_id, text: oneOf('R1 a 0 10', 'nonsense') }),
  'model-reading-taught': fc.record({
    model_id,
    board: oneOf('good-1', 'good-2'),
    point: oneOf('cell-v', 'nowhere'),
    mode: oneOf('volts' as const, 'ohms' as const),
    value: oneOf(3, null),
  }),
  'model-step-recorded': fc.record({
    model_id,
    step: fc.record({ id: oneOf('lid', 'open-lamp'), name: fc.constant('Lid') }),
    fasteners: fc.option(
      fc.record({
        id: fc.constant('screws'),
        name: fc.constant('Screws'),
        drive: fc.constant('Cross'),
        length_mm: fc.constant(6),
        count: oneOf(2, 4),
      }),
      { nil: undefined },
    ),
  }),
  'model-fit-seen': fc.record({
    model_id,
    slot: oneOf('board', 'lid'),
    part: oneOf('a board'),
    outcome: oneOf('fits' as const, 'bent' as const),
    item_id: fc.option(items, { nil: undefined }),
  }),
  'model-taken-in': fc.record({
    model_id,
    from_author: fc.constant('the next bench'),
    facts: fc.constant([{ kind: 'model-net-named' as const, body: { model_id: 'lamp-g', pin: 'R1.1', name: '0' } }]),
  }),
  'model-judged-again': fc.record({ item_id: items, model_id }),
});
