import { describe, expect, it } from 'vitest';
import { bestOrder, type Remedy, type Stakes } from '../../src/core/diagnosis/index.ts';

const CAUSES = { program: 0.8, virus: 0.15, hardware: 0.05 } as const;
const ACTIONS = [
  { id: 'reboot', cost: 1, mends: { program: 1 } },
  { id: 'scan', cost: 2, mends: { virus: 0.95 } },
  { id: 'reformat', cost: 25, mends: { program: 0.99, virus: 0.99 } },
  { id: 'buy', cost: 500, mends: { program: 1, virus: 1, hardware: 1 } },
] as const;

/** Written apart from the product: each cause walks along the order until it is mended. */
function costOf(order: readonly (typeof ACTIONS)[number][]): number {
  return Object.entries(CAUSES).reduce((total, [cause, chance]) => {
    let [left, paid] = [chance, 0];
    for (const { cost, mends } of order) {
      paid += left * cost;
      left *= 1 - ((mends as Record<string, number>)[cause] ?? 0);
    }
    return total + paid;
  }, 0);
}

function* endingInBuy(items: readonly (typeof ACTIONS)[number][]): Generator<(typeof ACTIONS)[number][]> {
  for (const [i, item] of items.entries()) {
    if (item.id === 'buy') yield [item];
    else for (const rest of endingInBuy(items.toSpliced(i, 1))) yield [item, ...rest];
  }
}

const WORKING = 100_000;
const STAKES: Stakes = { workingMinor: WORKING, asIsMinor: 0, hourMinor: 0, openingMinutes: { open: 0, 'board-out': 0 }, stage: 'closed' };
const REMEDIES = ACTIONS.map(({ id, cost, mends }): Remedy => ({ id, partsCostMinor: cost, mends, minutes: 0, risk: 0, stage: 'closed' }));

describe('the textbook troubleshooting exercise', () => {
  const orders = [...endingInBuy(ACTIONS)].map((order) => ({ order: order.map(({ id }) => id), cost: costOf(order) }));
  orders.sort((a, b) => a.cost - b.cost);

  it('costs 27.875 in its best order and 29.3325 in the next, by trying all', () => {
    expect(orders[0]!.order).toEqual(['reboot', 'scan', 'reformat', 'buy']);
    expect(orders[0]!.cost).toBeCloseTo(27.875, 10);
    expect(orders[1]!.cost).toBeCloseTo(29.3325, 10);
  });

  it('is solved by the exact order of remedies', () => {
    const sets = Object.entries(CAUSES).map(([cause, chance]) => ({ faults: [cause], chance }));
    const { steps, expectedMinor } = bestOrder(sets, REMEDIES.toReversed(), STAKES);
    expect(steps.map(({ remedy }) => remedy.id)).toEqual(orders[0]!.order);
    expect(WORKING - expectedMinor).toBeCloseTo(27.875, 8);
  });
});
