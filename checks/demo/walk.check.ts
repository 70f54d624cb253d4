import { beforeAll, describe, expect, test } from 'vitest';
import { join } from 'node:path';
import type { Bench } from '../../src/bench/bench.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { memoryStore } from '../../src/bench/testing/memory-store.ts';
import { seededClock } from '../../src/apps/cli/demo-walk/seeded-clock.ts';
import { walk } from '../../src/apps/cli/demo-walk/walk.ts';
import { loadModels } from '../../src/edges/models/index.ts';
import { ROOT } from './demo-bench.ts';

async function walked(seed: string): Promise<{ bench: Bench; lines: string[] }> {
  const { models } = await loadModels(join(ROOT, 'models'));
  const clock = seededClock(new Date('2026-05-04T09:00:00Z'), seed);
  const bench = openBench({ store: memoryStore(), models, clock, device: 'walk', version: 'check' });
  const lines: string[] = [];
  walk({ bench, models, clock, seed, say: (line) => lines.push(line) });
  return { bench, lines };
}

describe('the walk in the terminal', () => {
  let bench: Bench;
  let lines: string[];
  beforeAll(async () => {
    ({ bench, lines } = await walked('gull'));
  });

  test('ends with balanced books', () => {
    expect(bench.books().balanced).toBe(true);
    expect(lines.at(-1)).toBe('  The ledger is balanced.');
  });

  test('names a reason for each decision', () => {
    const decided = lines.flatMap((line, i) => (line.startsWith('  Decided: ') ? [i] : []));
    expect(decided.length).toBeGreaterThan(20);
    for (const i of decided) expect(lines[i + 1]).toMatch(/^ {4}because \S.{8}/);
  });

  test('leaves a listing for its price and buys another', () => {
    expect(bench.watch().listings.map(({ fate }) => fate)).toEqual(expect.arrayContaining(['dropped', 'bought']));
    expect(lines.some((line) => line.startsWith('  Decided: leave it'))).toBe(true);
  });

  test('brings each unit to an end: sold, kept or scrapped', () => {
    const ends = [...bench.state().items.values()].filter((item) => item.kind === 'unit').map((item) => item.status);
    expect(ends.length).toBeGreaterThanOrEqual(4);
    for (const end of ends) expect(['sold', 'kept', 'scrapped']).toContain(end);
  });

  test('sells as working only what passed every step of its proof', () => {
    const sold = [...bench.state().items.values()].filter((item) => item.sale?.as === 'working');
    expect(sold.length).toBeGreaterThan(0);
    for (const item of sold) expect([...item.proof.values()].every((step) => step.outcome === 'pass')).toBe(true);
  });

  test('opens each unit step by step, counts what comes out, and closes it with as much', () => {
    const units = [...bench.state().items.values()].filter((item) => item.kind === 'unit' && item.stepTimes.length > 0);
    expect(units.length).toBeGreaterThanOrEqual(2);
    for (const { id, status } of units) {
      const { done, fasteners } = bench.opening(id, 'stage:closed')!;
      expect(fasteners.sets.some(({ out }) => out > 0)).toBe(true);
      if (status === 'sold' || status === 'kept') expect([done.length === 0, fasteners.even]).toEqual([true, true]);
    }
  });

  test('is the same with the same seed, and another with another', async () => {
    expect((await walked('gull')).lines).toEqual(lines);
    expect((await walked('autumn')).lines).not.toEqual(lines);
  });
});
