import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import type { Bench } from '../../bench/bench.ts';
import { planAhead } from './plan-ahead.ts';

/** A bench that counts how often its plan is looked at. */
function countingBench() {
  const counts = { plans: 0, seq: 1 };
  const bench = { state: () => ({ seq: counts.seq }), items: () => ({ rows: [], next: null }), plan: () => (counts.plans += 1) };
  return { counts, bench: bench as unknown as Bench };
}

const until = async (met: () => boolean): Promise<void> => {
  while (!met()) await setTimeout(1);
};

it('plans once after the log has grown and is quiet, and not again until it grows', async () => {
  const { counts, bench } = countingBench();
  let isOver = false;
  planAhead(
    bench,
    () => isOver,
    () => undefined,
    1,
  );
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
