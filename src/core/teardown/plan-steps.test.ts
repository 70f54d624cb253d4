import { describe, expect, it } from 'vitest';
import { assertOrder } from './assert-order.ts';
import { leastWay } from './least-way.ts';
import { planSteps } from './plan-steps.ts';
import type { Need, Step } from './step.ts';
import { cheapestByTrying } from './testing/cheapest-by-trying.ts';
import { randomSteps } from './testing/random-steps.ts';
import { USUAL_WEIGHTS } from './effort.ts';

const step = (id: string, needs: readonly Need[] = [], rest: Partial<Step> = {}): Step => ({
  id,
  needs,
  tool: null,
  side: null,
  minutes: 1,
  risk: 0,
  ...rest,
});

const ids = (plan: ReturnType<typeof planSteps>): string[] => (plan.ok ? plan.order.map(({ id }) => id) : []);

describe('the way to a goal', () => {
  it('takes only the steps that the goal needs', () => {
    const plan = planSteps([step('back'), step('door'), step('board', ['back'])], ['board']);
    expect(ids(plan)).toEqual(['back', 'board']);
  });

  it('is empty when the goal is reached already', () => {
    expect(ids(planSteps([step('back')], ['back'], { done: new Set(['back']) }))).toEqual([]);
  });

  it('goes round by the alternative that is quicker, and by the other when that is safer', () => {
    const steps = [
      step('pry', [], { minutes: 1, risk: 0.02 }),
      step('unscrew', [], { minutes: 4 }),
      step('in', [{ any: ['pry', 'unscrew'] }]),
    ];
    expect(ids(planSteps(steps, ['in']))).toEqual(['unscrew', 'in']);
    expect(ids(planSteps(steps, ['in'], { weights: { ...USUAL_WEIGHTS, harm: 0 } }))).toEqual(['pry', 'in']);
  });

  it('shares a step between two needs rather than take the cheapest way to each', () => {
    const steps = [
      step('shared', [], { minutes: 3 }),
      step('own-a', [], { minutes: 2 }),
      step('own-b', [], { minutes: 2 }),
      step('a', [{ any: ['shared', 'own-a'] }]),
      step('b', [{ any: ['shared', 'own-b'] }]),
    ];
    expect(ids(planSteps(steps, ['a', 'b'])).sort()).toEqual(['a', 'b', 'shared']);
  });

  it('changes tools and turns over as little as the needs allow', () => {
    const steps = [
      step('s1', [], { tool: 'cross', side: 'back' }),
      step('p1', [], { tool: 'pick', side: 'back' }),
      step('s2', [], { tool: 'cross', side: 'front' }),
      step('p2', ['s1'], { tool: 'pick', side: 'back' }),
    ];
    const plan = planSteps(steps, ['s1', 's2', 'p1', 'p2']);
    expect(plan).toMatchObject({ ok: true, exact: true, effort: { toolChanges: 2, turnings: 1 } });
  });

  it('begins with what is in the hand and with the side that is up', () => {
    const steps = [step('a', [], { tool: 'pick', side: 'front' }), step('b', [], { tool: 'cross', side: 'back' })];
    const plan = planSteps(steps, ['a', 'b'], { start: { tool: 'cross', side: 'back' } });
    expect(ids(plan)).toEqual(['b', 'a']);
    expect(plan).toMatchObject({ effort: { toolChanges: 1, turnings: 1 } });
  });

  it('names what no order of steps can meet', () => {
    const ring = [step('a', ['b']), step('b', ['a']), step('c')];
    expect(planSteps(ring, ['c', 'a'])).toEqual({ ok: false, code: 'goal-out-of-reach', unmet: ['a'] });
    expect(planSteps([step('a', [{ any: [] }])], ['a'])).toMatchObject({ ok: false });
  });

  it('refuses steps that do not hang together', () => {
    expect(() => planSteps([step('a'), step('a')], ['a'])).toThrow(expect.objectContaining({ code: 'duplicate-step' }));
    expect(() => planSteps([step('a', ['x'])], ['a'])).toThrow(expect.objectContaining({ code: 'unknown-step' }));
    expect(() => planSteps([step('a')], ['x'])).toThrow(expect.objectContaining({ code: 'unknown-step' }));
    expect(() => planSteps([step('a', [], { minutes: -1 })], ['a'])).toThrow(expect.objectContaining({ code: 'bad-number' }));
  });
});

describe('an order proved best', () => {
  it('costs what the best of all orders costs', () => {
    for (let seed = 0; seed < 60; seed++) {
      const { steps, goal } = randomSteps(`unit ${seed}`, 4 + (seed % 4));
      const plan = planSteps(steps, goal);
      const best = cheapestByTrying(steps, goal, USUAL_WEIGHTS);
      if (!plan.ok) {
        expect(best).toBe(Infinity);
        continue;
      }
      assertOrder(plan.order, goal);
      expect(plan.exact).toBe(true);
      expect(plan.effort.cost).toBeCloseTo(best, 9);
      expect(plan.bound).toBe(plan.effort.cost);
    }
  });

  it('never costs less than the bound that is shown beyond 25 steps', () => {
    for (let seed = 0; seed < 60; seed++) {
      const { steps, goal } = randomSteps(`bound ${seed}`, 4 + (seed % 4));
      const best = cheapestByTrying(steps, goal, USUAL_WEIGHTS);
      const least = leastWay(steps, goal, new Set(), USUAL_WEIGHTS);
      expect(least).toBeLessThanOrEqual(best + 1e-9);
      expect(least).toBeGreaterThan(0);
    }
    expect(leastWay([step('a', ['b']), step('b', ['a'])], ['a'], new Set(), USUAL_WEIGHTS)).toBe(Infinity);
  });

  it('is given up with a bound when told to stop, and beyond 25 steps', () => {
    for (let seed = 0; seed < 20; seed++) {
      const { steps, goal } = randomSteps(`stop ${seed}`, 7);
      const best = planSteps(steps, goal);
      const stopped = planSteps(steps, goal, { shouldStop: () => true });
      if (!best.ok || !stopped.ok) continue;
      assertOrder(stopped.order, goal);
      expect(stopped.exact).toBe(best.order.length === 0);
      expect(stopped.bound).toBeLessThanOrEqual(best.effort.cost + 1e-9);
      expect(stopped.effort.cost).toBeGreaterThanOrEqual(best.effort.cost - 1e-9);
    }
    const many = randomSteps('many', 40);
    const plan = planSteps(
      many.steps,
      many.steps.map(({ id }) => id),
    );
    expect(plan).toMatchObject({ ok: true, exact: false });
    if (plan.ok) expect(plan.bound).toBeLessThanOrEqual(plan.effort.cost);
  });
});
