import { PlanningError } from './planning-error.ts';
import type { Outcome } from './outcomes.ts';

/** At most so many values are kept after each addition. */
const MOST_VALUES = 400;

/**
 * Distribution of the sum of two independent ones. Beyond 400 values they are gathered on an even grid, each shared
 * between its two neighbours there, so the mean stays exact and the spread grows by less than a grid step.
 */
export function sumOf(a: readonly Outcome[], b: readonly Outcome[]): Outcome[] {
  const count = a.length * b.length;
  if (count <= MOST_VALUES)
    return a.flatMap((x) => b.map((y) => ({ valueMinor: x.valueMinor + y.valueMinor, chance: x.chance * y.chance })));
  const values = new Float64Array(count);
  const chances = new Float64Array(count);
  let i = 0;
  for (const x of a)
    for (const y of b) {
      values[i] = x.valueMinor + y.valueMinor;
      chances[i++] = x.chance * y.chance;
    }
  return onGrid(values, chances);
}

/** Distribution of the money from `count` independent units that are alike (1 or more), by repeated doubling. */
export function sumOfAlike(unit: readonly Outcome[], count: number): Outcome[] {
  if (!Number.isInteger(count) || count < 1) throw new PlanningError('bad-count', `a lot holds 1 unit or more, got ${count}`);
  let total: readonly Outcome[] | null = null;
  let power = unit;
  for (let left = count; ; power = sumOf(power, power)) {
    if (left % 2 === 1) total = total ? sumOf(total, power) : power;
    left = Math.floor(left / 2);
    if (left === 0) return [...total!];
  }
}

function onGrid(values: Float64Array, chances: Float64Array): Outcome[] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low === high) return [{ valueMinor: low, chance: 1 }];
  const step = (high - low) / (MOST_VALUES - 1);
  const grid = new Float64Array(MOST_VALUES);
  for (let i = 0; i < values.length; i++) {
    const place = (values[i]! - low) / step;
    const left = Math.min(MOST_VALUES - 2, Math.floor(place));
    grid[left]! += chances[i]! * (left + 1 - place);
    grid[left + 1]! += chances[i]! * (place - left);
  }
  return Array.from(grid, (chance, i) => ({ valueMinor: low + i * step, chance })).filter((o) => o.chance > 0);
}
