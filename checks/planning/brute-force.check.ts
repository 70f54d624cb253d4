import { afterAll, describe, expect, it } from 'vitest';
import { assertPlan, planPile, simulate, meanOfAll, standingOf } from '../../src/core/planning/index.ts';
import { openLinearSolver } from '../../src/edges/solver/index.ts';
import { bruteForce } from './brute-force.ts';
import { smallPile } from './small-pile.ts';

const AMPLE = { moneyMinor: 1e6, minutes: 1e5, minutesAWeek: 600 };
const TIGHT = { moneyMinor: 900, minutes: 110, minutesAWeek: 600 };

const solver = openLinearSolver();
afterAll(() => solver.close());

describe('small piles against every plan there is', () => {
  it.each(Array.from({ length: 10 }, (_, i) => i))(
    'finds the optimum exactly where neither hours nor money run out, set %i',
    async (set) => {
      for (let i = 0; i < 60; i++) {
        const pile = smallPile(`${set}-${i}`, AMPLE);
        const { problem, choice, plan } = await planPile(pile, { seed: 'check' });
        assertPlan(pile, plan);
        const expected = standingOf(problem, choice).profitMinor();
        expect(expected, `pile ${set}-${i}`).toBeCloseTo(bruteForce(pile), 6);
      }
    },
  );

  it('keeps the limits where they bind, and loses little against the optimum', async () => {
    let [found, best] = [0, 0];
    for (let i = 0; i < 60; i++) {
      const pile = smallPile(`tight ${i}`, TIGHT);
      const { problem, choice, plan } = await planPile(pile, { seed: 'check', solve: solver.solve });
      assertPlan(pile, plan);
      found += meanOfAll(simulate(problem, choice, 'fresh', 4000).profits);
      best += bruteForce(pile);
    }
    expect(found / best).toBeGreaterThan(0.985);
    expect(found / best).toBeLessThan(1.005);
  });
});
