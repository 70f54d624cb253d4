import { describe, expect, it } from 'vitest';
import { assertOrder, planSteps, USUAL_WEIGHTS } from '../../src/core/teardown/index.ts';
import { cheapestByTrying } from '../../src/core/teardown/testing/cheapest-by-trying.ts';
import { randomSteps } from '../../src/core/teardown/testing/random-steps.ts';

const GRAPHS = 520;

describe('the planned order against every order', () => {
  it(`costs as little as the best of all orders, on ${GRAPHS} random graphs of up to nine steps`, () => {
    let reached = 0;
    for (let seed = 0; seed < GRAPHS; seed++) {
      const { steps, goal } = randomSteps(`every order ${seed}`, 4 + (seed % 6));
      const plan = planSteps(steps, goal);
      const best = cheapestByTrying(steps, goal, USUAL_WEIGHTS);
      if (!plan.ok) throw new Error(`no way in graph ${seed}`);
      assertOrder(plan.order, goal);
      expect(plan.effort.cost).toBeCloseTo(best, 9);
      if (plan.exact) reached++;
    }
    expect(reached).toBe(GRAPHS);
  });
});
