import type { Choice } from './choice.ts';
import type { Standing } from './standing.ts';

/** One elementary change of a choice. */
export type Change =
  | { readonly set: 'option'; readonly at: number; readonly to: number }
  | { readonly set: 'open'; readonly at: number; readonly to: 0 | 1 }
  | { readonly set: 'fill'; readonly at: number; readonly to: number };

/** Improvements smaller than this, in minor units, are not worth a change. */
export const EPSILON = 1e-7;

/** Makes the changes if they raise the score, which is what comes out; else leaves everything as it was, and `score` comes out. */
export function attempt(standing: Standing, changes: readonly Change[], score: number): number {
  const restore = checkpoint(standing, changes);
  for (const change of changes) make(standing, change);
  const reached = standing.score();
  if (reached > score + EPSILON) return reached;
  restore();
  return score;
}

/** Brings back everything that these changes will change. */
export function checkpoint(standing: Standing, changes: readonly Change[]): () => void {
  const { choice } = standing;
  const before: number[] = [];
  const models: number[] = [];
  for (const change of changes) {
    before.push(listOf(choice, change)[change.at]!);
    const m = modelOf(standing, change);
    if (!models.includes(m)) models.push(m);
  }
  const restoreSums = standing.remember(models);
  return () => {
    for (let i = changes.length - 1; i >= 0; i--) listOf(choice, changes[i]!)[changes[i]!.at] = before[i]!;
    restoreSums();
  };
}

const listOf = ({ option, open, fill }: Choice, { set }: Change): Uint8Array | Int32Array =>
  set === 'option' ? option : set === 'open' ? open : fill;

/** Makes one change, unless it touches what is fixed. */
export function make(standing: Standing, { set, at, to }: Change): void {
  const { fixed } = standing;
  if (set === 'option' ? fixed.things.has(at) : set === 'open' && fixed.units.has(at)) return;
  if (set === 'option') standing.setOption(at, to);
  else if (set === 'open') standing.setOpen(at, to === 1);
  else standing.setFill(at, to);
}

function modelOf({ problem }: Standing, { set, at }: Change): number {
  if (set === 'option') return problem.things[at]!.model;
  return set === 'open' ? problem.units[at]!.model : problem.fills[at]!.model;
}
