import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { chanceOf, logOddsOf } from './boosted-trees.ts';
import { growBoostedTrees } from './grow-boosted-trees.ts';

/** Real where exactly one of two numbers is above a half, with one in ten told wrongly; a third number says nothing. */
function sample(seed: string, count: number): { rows: Float32Array[]; real: boolean[] } {
  const random = randomStream(seed);
  const rows = Array.from({ length: count }, () => Float32Array.of(random(), random(), random()));
  const real = rows.map(([a, b]) => a! > 0.5 !== b! > 0.5).map((truth) => (random() < 0.1 ? !truth : truth));
  return { rows, real };
}

describe('boosted trees', () => {
  const { rows, real } = sample('learned', 1500);
  const trees = growBoostedTrees(rows, real);
  const fresh = sample('measured', 1500);
  const chances = fresh.rows.map((row) => chanceOf(logOddsOf(trees, row)));

  it('learn what no single number tells', () => {
    const right = chances.filter((chance, i) => chance > 0.5 === fresh.real[i]).length;
    expect(right / chances.length).toBeGreaterThan(0.86);
  });

  it('give chances that hold on rows they did not learn from', () => {
    const sure = chances.flatMap((chance, i) => (chance > 0.8 ? [{ chance, real: fresh.real[i]! }] : []));
    const mean = sure.reduce((sum, { chance }) => sum + chance, 0) / sure.length;
    const held = sure.filter((each) => each.real).length / sure.length;
    expect(Math.abs(mean - held)).toBeLessThan(0.05);
  });

  it('are the same for the same rows', () => {
    expect(growBoostedTrees(rows, real)).toEqual(trees);
  });
});
