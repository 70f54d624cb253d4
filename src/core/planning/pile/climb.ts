import type { RandomStream } from '../../numeric/index.ts';
import { attempt, checkpoint, EPSILON, make, type Change } from './changes.ts';
import type { Choice } from './choice.ts';
import { neighboursOf, type Neighbour } from './neighbours.ts';
import type { Problem } from './problem.ts';
import { likelyOption } from './promise.ts';
import type { Standing } from './standing.ts';

/**
 * Local search: takes every step that raises the score, in random order, model by model, until none of these models has one left.
 * The score that is reached comes out. `shouldStop` ends it early, wherever it is.
 */
export function climb(
  standing: Standing,
  models: readonly number[],
  random: RandomStream,
  shouldStop: () => boolean,
  swaps = Infinity,
): number {
  let score = standing.score();
  let waiting = [...models];
  while (waiting.length > 0) {
    const improved: number[] = [];
    for (const m of waiting) {
      const before = score;
      for (let quiet = false; !quiet && !shouldStop();) {
        const start = score;
        for (const neighbour of shuffled(neighboursOf(standing, m, swaps), random)) score = step(standing, neighbour, score);
        quiet = score <= start + EPSILON;
      }
      if (score > before + EPSILON) improved.push(m);
    }
    if (shouldStop()) break;
    // A step in one model frees hours and money for the others.
    waiting = improved.length === 0 ? [] : models.filter((m) => improved.length > 1 || m !== improved[0]);
  }
  return score;
}

function step(standing: Standing, { changes, opens }: Neighbour, score: number): number {
  if (stale(standing, changes, opens)) return score;
  return opens === undefined ? attempt(standing, changes, score) : openWell(standing, changes, opens, score);
}

/** Whether an earlier step of the same round has made this one meaningless. */
function stale({ choice }: Standing, changes: readonly Change[], opens: number | undefined): boolean {
  if (opens !== undefined && choice.open[opens] === 1) return true;
  return changes.some(({ set, at, to }) =>
    set === 'open' ? choice.open[at] === to : set === 'fill' && Math.abs(choice.fill[at]! - to) !== 1,
  );
}

/** Opening that loses so much of a sale is not saved by other remedies. */
const HOPELESS = 0.3;

/** Opens a unit after these changes, with the remedies that do best there one after the other; undone unless the score rises. */
export function openWell(standing: Standing, changes: readonly Change[], u: number, score: number): number {
  const { problem } = standing;
  const { things } = problem.units[u]!;
  const all: Change[] = [
    ...changes,
    ...things.map((t) => ({ set: 'option' as const, at: t, to: likelyOption(problem, t) })),
    { set: 'open', at: u, to: 1 },
  ];
  const restore = checkpoint(standing, all);
  for (const change of all) make(standing, change);
  let reached = standing.score();
  if (reached < score - HOPELESS * problem.models[problem.units[u]!.model]!.soldMinor) {
    restore();
    return score;
  }
  for (const t of things) reached = bestOption(standing, t, reached);
  if (reached > score + EPSILON) return reached;
  restore();
  return score;
}

function bestOption(standing: Standing, t: number, score: number): number {
  let best = score;
  const { options } = standing.problem.things[t]!;
  for (let o = 0; o < options.length; o++) {
    if (o !== standing.choice.option[t]) best = attempt(standing, [{ set: 'option', at: t, to: o }], best);
  }
  return best;
}

/** A random order (Fisher & Yates 1938, as Durstenfeld 1964). */
export function shuffled<T>(items: readonly T[], random: RandomStream): T[] {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}

/** Everything opened with what looks best thing by thing: where a search that takes away begins. */
export function fullChoice(problem: Problem): Choice {
  return {
    open: new Uint8Array(problem.units.length).fill(1),
    option: Uint8Array.from(problem.things, (_, t) => likelyOption(problem, t)),
    fill: new Int32Array(problem.fills.length),
  };
}
