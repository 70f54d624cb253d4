import { checkpoint, EPSILON, make, type Change } from './changes.ts';
import type { Choice } from './choice.ts';
import type { Standing } from './standing.ts';

/**
 * Puts together whole plans of single models: at given prices models separate, so what is good for one at another price of an hour is a good
 * way to use more or fewer hours there. Exchanges one model's plan, then two at once, as long as the score rises; it comes out.
 */
export function combine(standing: Standing, plans: readonly Choice[]): number {
  const { problem } = standing;
  const all = problem.models.map((_, m) => m);
  let score = standing.score();
  for (let before = -Infinity; score > before + EPSILON;) {
    before = score;
    for (const m of all) for (const plan of plans) score = exchange(standing, [[m, plan]], score);
    if (score > before + EPSILON) continue;
    for (const m of all)
      for (const n of all) {
        if (n <= m) continue;
        for (const one of plans)
          for (const other of plans)
            score = exchange(
              standing,
              [
                [m, one],
                [n, other],
              ],
              score,
            );
      }
  }
  return score;
}

function exchange(standing: Standing, parts: readonly (readonly [number, Choice])[], score: number): number {
  const changes = parts.flatMap(([m, plan]) => differences(standing, m, plan));
  if (changes.length === 0) return score;
  const restore = checkpoint(standing, changes);
  for (const change of changes) make(standing, change);
  const reached = standing.score();
  if (reached > score + EPSILON) return reached;
  restore();
  return score;
}

/** The changes that give one model the plan that another choice has for it. */
function differences({ problem, choice }: Standing, m: number, plan: Choice): Change[] {
  const model = problem.models[m]!;
  const changes: Change[] = [];
  for (const u of model.units) if (choice.open[u] !== plan.open[u]) changes.push({ set: 'open', at: u, to: plan.open[u] === 1 ? 1 : 0 });
  for (const { things, fills } of model.pools) {
    for (const t of things) if (choice.option[t] !== plan.option[t]) changes.push({ set: 'option', at: t, to: plan.option[t]! });
    for (const f of fills) if (choice.fill[f] !== plan.fill[f]) changes.push({ set: 'fill', at: f, to: plan.fill[f]! });
  }
  return changes;
}
