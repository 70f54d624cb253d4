import { expect, test } from 'vitest';
import { daysUntil, kaplanMeier, logRank, type Waiting } from '../../src/core/market/index.ts';

/** Sources: SOURCE.md beside this file. Weeks of remission stand for days on the market: the censored ones are the unsold. */
const TREATED: Waiting[] = [
  [6, 1],
  [6, 1],
  [6, 1],
  [6, 0],
  [7, 1],
  [9, 0],
  [10, 1],
  [10, 0],
  [11, 0],
  [13, 1],
  [16, 1],
  [17, 0],
  [19, 0],
  [20, 0],
  [22, 1],
  [23, 1],
  [25, 0],
  [32, 0],
  [32, 0],
  [34, 0],
  [35, 0],
].map(([days, sold]) => ({ days: days!, sold: sold === 1 }));
const CONTROL: Waiting[] = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23].map((days) => ({ days, sold: true }));

test('the share unsold is that of the published remission times, with errors by Greenwood', () => {
  const steps = kaplanMeier(TREATED);
  expect(steps.map(({ days }) => days)).toEqual([6, 7, 10, 13, 16, 22, 23]);
  expect(steps.map(({ atRisk }) => atRisk)).toEqual([21, 17, 15, 12, 11, 7, 6]);
  const unsold = [0.857143, 0.806723, 0.752941, 0.690196, 0.627451, 0.537815, 0.448179];
  const errors = [0.07636, 0.086935, 0.09635, 0.106815, 0.114054, 0.128234, 0.134591];
  steps.forEach((step, i) => {
    expect(Math.abs(step.unsold - unsold[i]!)).toBeLessThan(1e-6);
    expect(Math.abs(step.error - errors[i]!)).toBeLessThan(1e-6);
  });
});

test('the medians are 23 and 8, and the two groups differ by a log-rank of 16.7929', () => {
  expect([daysUntil(kaplanMeier(TREATED)), daysUntil(kaplanMeier(CONTROL))]).toEqual([23, 8]);
  expect(Math.abs(logRank(TREATED, CONTROL) - 16.7929)).toBeLessThan(1e-4);
});
