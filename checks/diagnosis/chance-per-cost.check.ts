import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedCost, orderByChancePerCost, type Action } from '../../src/core/diagnosis/index.ts';

function* orders<T>(items: readonly T[]): Generator<T[]> {
  if (items.length === 0) yield [];
  for (const [i, item] of items.entries()) for (const rest of orders(items.toSpliced(i, 1))) yield [item, ...rest];
}

/** Written apart from the product: if cause k is the one, all actions up to the one against k are paid. */
function costByCause(order: readonly Action[]): number {
  const left = 1 - order.reduce((sum, { chance }) => sum + chance, 0);
  const all = order.reduce((sum, { cost }) => sum + cost, 0);
  return order.reduce((sum, { chance }, k) => sum + chance * order.slice(0, k + 1).reduce((paid, { cost }) => paid + cost, 0), left * all);
}

const actions = fc
  .array(fc.record({ weight: fc.integer({ min: 1, max: 1000 }), cost: fc.integer({ min: 0, max: 100 }) }), { minLength: 1, maxLength: 6 })
  .chain((raw) => fc.record({ raw: fc.constant(raw), spare: fc.integer({ min: 0, max: 1000 }) }))
  .map(({ raw, spare }): Action[] => {
    const sum = raw.reduce((total, { weight }) => total + weight, spare);
    return raw.map(({ weight, cost }, i) => ({ id: String(i), chance: weight / sum, cost }));
  });

describe('the order by chance per cost', () => {
  it('is 2-4-1-3 for the toy of the rule, at an expected 8.5', () => {
    const toy = [0.4, 0.3, 0.2, 0.1].map((chance, i) => ({ id: String(i + 1), chance, cost: [8, 2, 5, 1][i]! }));
    const order = orderByChancePerCost(toy);
    expect(order.map(({ id }) => id)).toEqual(['2', '4', '1', '3']);
    expect(expectedCost(order)).toBeCloseTo(8.5, 12);
  });

  it('costs no more than the best of all orders, in 600 random cases', () => {
    fc.assert(
      fc.property(actions, (some) => {
        const best = Math.min(...[...orders(some)].map(costByCause));
        const order = orderByChancePerCost(some);
        expect(Math.abs(expectedCost(order) - costByCause(order))).toBeLessThan(1e-9);
        expect(expectedCost(order)).toBeLessThan(best + 1e-9);
      }),
      { numRuns: 600 },
    );
  });
});
