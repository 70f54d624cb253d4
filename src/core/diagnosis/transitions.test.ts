import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stateSpace } from './state-space.ts';
import { SMALL_PLAYER } from './testing/small-player.ts';
import { remedyTransition, transplantTransition, type Transition } from './transitions.ts';

const space = stateSpace(SMALL_PLAYER);
const BLOCKS = SMALL_PLAYER.faults.map(({ block }) => block);
const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
const sum = (a: Float64Array): number => a.reduce((x, y) => x + y, 0);
const weights = fc
  .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: space.size, maxLength: space.size })
  .map((w) => Float64Array.from(w));
const remedies = fc
  .tuple(
    fc.constantFrom(...SMALL_PLAYER.remedies.map(({ id }) => id)),
    fc.constantFrom('mended' as const, 'not-mended' as const, 'made-worse' as const, 'not-tried-yet' as const),
  )
  .map(([id, outcome]) => remedyTransition(SMALL_PLAYER, space, id, outcome));
const incoming = fc.dictionary(fc.constantFrom(...SMALL_PLAYER.faults.map(({ id }) => id)), fc.double({ min: 0, max: 1, noNaN: true }));
const transplants = fc
  .tuple(fc.subarray(BLOCKS, { minLength: 1 }), fc.option(incoming))
  .map(([blocks, comes]) => transplantTransition(SMALL_PLAYER, space, blocks, comes));

describe('a change of the unit', () => {
  it('carries chances back as it moves weights on', () => {
    fc.assert(
      fc.property(fc.oneof<fc.Arbitrary<Transition>[]>(remedies, transplants), weights, weights, (change, before, after) => {
        expect(dot(change.forward(before), after)).toBeCloseTo(dot(before, change.backward(after)), 9);
      }),
      { numRuns: 300 },
    );
  });

  it('by transplant loses no weight', () => {
    fc.assert(
      fc.property(transplants, weights, (change, before) => {
        expect(sum(change.forward(before))).toBeCloseTo(sum(before), 9);
      }),
    );
  });

  it('by a remedy has outcomes that share the whole of each state', () => {
    const ones = new Float64Array(space.size).fill(1);
    for (const { id } of SMALL_PLAYER.remedies) {
      const [mended, not, worse] = (['mended', 'not-mended', 'made-worse'] as const).map((outcome) =>
        remedyTransition(SMALL_PLAYER, space, id, outcome).backward(ones),
      );
      for (let s = 0; s < space.size; s++) expect(mended![s]! + not![s]! + worse![s]!).toBeCloseTo(1, 12);
    }
  });
});
