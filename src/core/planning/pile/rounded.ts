import { idleChoice, type Choice } from './choice.ts';
import type { Problem } from './problem.ts';
import type { Relaxation } from './relaxation.ts';

/**
 * The relaxation's answer in whole numbers, as a place to start from: units that are mostly opened are, things alike get the options in
 * the shares that they have there, fills are rounded. Limits may be broken by it.
 */
export function roundedChoice(problem: Problem, { unitColumn, kinds, fillColumns }: Relaxation, x: Float64Array): Choice {
  const choice = idleChoice(problem);
  unitColumn.forEach((column, u) => (choice.open[u] = x[column]! > 0.5 ? 1 : 0));
  for (const { things, columns } of kinds) {
    const pooled = things.filter((t) => problem.things[t]!.unit < 0 || choice.open[problem.things[t]!.unit] === 1);
    const total = columns.reduce((sum, column) => sum + x[column]!, 0);
    let [reached, next] = [0, 0];
    columns.forEach((column, o) => {
      reached += total > 0 ? x[column]! / total : 0;
      for (const until = Math.round(reached * pooled.length); next < until; next++) choice.option[pooled[next]!] = o;
    });
  }
  fillColumns.forEach((columns, f) => (choice.fill[f] = Math.round(columns.reduce((sum, column) => sum + x[column]!, 0))));
  return choice;
}
