import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import type { AppParts } from './app-parts.ts';
import { planAhead } from './plan-ahead.ts';

/** A bench that counts how often its plan is looked at. */
function countingBench() {
  const counts = { plans: 0, seq: 1 };
  const bench = { state: () => ({ seq: counts.seq }), plan: () => (counts.plans += 1) };
  const door = { items: async () => ({ rows: [], next: null }) };
  return { counts, parts: { bench, door, log: () => undefined } as unknown as AppParts };
}

const until = async (met: () => boolean): Promise<void> => {
  while (!met()) await setTimeout(1);
};

it('plans once after the log has grown and is quiet, and not again until it grows', async () => {
  const { counts, parts } = countingBench();
  let isOver = false;
  planAhead(parts, () => isOver, 1);
  await until(() => counts.plans === 1);
  await setTimeout(20);
  expect(counts.plans).toBe(1);
  counts.seq = 2;
  await until(() => counts.plans === 2);
  isOver = true;
  counts.seq = 3;
  await setTimeout(20);
  expect(counts.plans).toBe(2);
});
