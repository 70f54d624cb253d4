import { describe, expect, it } from 'vitest';
import { idleChoice } from './choice.ts';
import { modelWorth } from './model-worth.ts';
import { expectedExcess } from './normal-loss.ts';
import { problemOf } from './problem.ts';
import { trueAim } from './search.ts';
import { meanOfAll, riskAdjusted, simulate, worstTenth } from './simulate.ts';
import { Standing } from './standing.ts';
import { atLeast, mostOf, tailsOf } from './tails.ts';
import { faulty, remedy, twoPlayers, unit, working } from './testing/two-players.ts';

describe('how many of several doubtful things work', () => {
  it('is binomial for equal chances: 1, 15/16, 11/16, 5/16, 1/16 for four even ones', () => {
    const tails = tailsOf([0.5, 0.5, 0.5, 0.5]);
    expect([0, 1, 2, 3, 4, 5].map((n) => 16 * atLeast(tails, n))).toEqual([16, 15, 11, 5, 1, 0]);
  });

  it('counts what is sure apart and leaves out what never works', () => {
    const tails = tailsOf([1, 0, 0.3, 1]);
    expect([mostOf(tails), atLeast(tails, 2)]).toEqual([3, 1]);
    expect(atLeast(tails, 3)).toBeCloseTo(0.3, 12);
  });
});

describe('the worth of a model', () => {
  const problem = problemOf(twoPlayers());
  const [model] = problem.models;

  it('is the sum of gains times the chance that every slot has that many', () => {
    // 8000 − 30 min at 20 − (500 + 400) = 6500 each; at least one: 0.75 · 1; both: 0.25 · 0.4.
    const { gainMinor, built } = modelWorth(model!, [tailsOf([0.5, 0.5]), tailsOf([1, 0.4])], null, problem.minuteMinor);
    expect(built).toBeCloseTo(0.85, 12);
    expect(gainMinor).toBeCloseTo(6500 * 0.85, 9);
  });

  it('does not count a unit that costs more than it brings', () => {
    const dear = { ...model!, soldMinor: 1000 };
    expect(modelWorth(dear, [tailsOf([1]), tailsOf([1])], null, problem.minuteMinor).gainMinor).toBe(0);
  });
});

describe('a simulation', () => {
  const pile = twoPlayers();
  const original = { slots: ['board', 'display'], moreMinor: 700 };
  const problem = problemOf({
    ...pile,
    models: [{ ...pile.models[0]!, original }],
    items: [
      unit('A', faulty('board', remedy('reflow', 0.6)), faulty('display', remedy('clean', 0.5))),
      unit('B', working('board'), faulty('display', remedy('clean', 0.5))),
    ],
  });
  const choice = idleChoice(problem);
  choice.open.fill(1);
  problem.things.forEach(({ options }, t) => (choice.option[t] = options.length - 1));

  it('agrees with the exact expectation where hours do not run out', () => {
    const { profits } = simulate(problem, choice, 'agree', 40_000);
    const exact = new Standing(problem, choice, trueAim(problem, 0)).profitMinor();
    const mean = meanOfAll(profits);
    const error = Math.sqrt(profits.reduce((sum, profit) => sum + (profit - mean) ** 2, 0)) / profits.length;
    expect(Math.abs(mean - exact)).toBeLessThan(4 * error);
  });

  it('finishes nothing when no minutes are left for it', () => {
    const short = { ...problem, pile: { ...problem.pile, limits: { ...problem.pile.limits, minutes: 85 } } };
    expect(meanOfAll(simulate(short, choice, 'short', 200).built)).toBe(0);
  });

  it('gives the same outcomes to things whatever else lies in the pile', () => {
    const more = problemOf({ ...problem.pile, items: [...problem.pile.items, unit('C', faulty('board'))] });
    const larger = idleChoice(more);
    larger.open.set(choice.open);
    larger.option.set(choice.option);
    const [a, b] = [simulate(problem, choice, 'same', 50).profits, simulate(more, larger, 'same', 50).profits];
    expect(b.map((profit, k) => profit - a[k]!).every((difference) => Math.abs(difference - 1000) < 1e-9)).toBe(true);
  });

  it('takes the share of the shortfall off that the person wants', () => {
    const values = Float64Array.from({ length: 20 }, (_, i) => i);
    expect(worstTenth(values)).toBe(0.5);
    expect([riskAdjusted(values, 0), riskAdjusted(values, 0.5), riskAdjusted(values, 1)]).toEqual([9.5, 5, 0.5]);
  });
});

it('reckons what a normal variable exceeds a limit by on average: 0.3989 sd at the mean, 0.0833 one sd above it', () => {
  // The unit normal loss integral; tabulated values from memory.
  expect(expectedExcess(10, 4, 10)).toBeCloseTo(2 * 0.39894, 4);
  expect(expectedExcess(10, 4, 12)).toBeCloseTo(2 * 0.08332, 4);
  expect(expectedExcess(10, 0, 7)).toBe(3);
});
