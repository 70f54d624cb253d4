import { describe, expect, it } from 'vitest';
import { studentBelow } from '../../src/core/numeric/index.ts';

/** Points that Student's t stays below with 97.5 %, by degrees of freedom, as tabulated to three decimals; see SOURCE.md. */
const TABLE = [
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [5, 2.571],
  [10, 2.228],
  [30, 2.042],
] as const;

describe("Student's t against the printed table", () => {
  it.each(TABLE)('with %d degrees of freedom is below %d with 97.5 %%', (dof, t) => {
    expect(studentBelow(t - 0.0006, dof)).toBeLessThan(0.975);
    expect(studentBelow(t + 0.0006, dof)).toBeGreaterThan(0.975);
  });
});
