import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { layersCost, takeFifo } from './fifo.ts';

const layer = fc.record({ count: fc.integer({ min: 1, max: 500 }), costMinor: fc.integer({ min: 0, max: 1_000_000 }) });

test('takes the oldest layer first and splits the one that it breaks', () => {
  const taken = takeFifo(
    [
      { count: 2, costMinor: 100 },
      { count: 3, costMinor: 100 },
    ],
    3,
  );
  expect(taken).toEqual({ count: 3, costMinor: 133, rest: [{ count: 2, costMinor: 67 }] });
});

test('takes what there is when asked for more', () => {
  expect(takeFifo([{ count: 2, costMinor: 99 }], 5)).toEqual({ count: 2, costMinor: 99, rest: [] });
});

test('loses no penny and no thing, however it is taken', () => {
  fc.assert(
    fc.property(fc.array(layer, { maxLength: 8 }), fc.array(fc.integer({ min: 0, max: 300 }), { maxLength: 12 }), (layers, takes) => {
      let rest = layers as readonly { count: number; costMinor: number }[];
      let spent = 0;
      let count = 0;
      for (const take of takes) {
        const taken = takeFifo(rest, take);
        rest = taken.rest;
        spent += taken.costMinor;
        count += taken.count;
      }
      expect(spent + layersCost(rest)).toBe(layersCost(layers));
      expect(count + rest.reduce((sum, l) => sum + l.count, 0)).toBe(layers.reduce((sum, l) => sum + l.count, 0));
    }),
  );
});

test('refuses half a thing', () => {
  expect(() => takeFifo([], 1.5)).toThrow(/whole number/);
});
