import { Heap } from './heap.ts';
import { leastAhead, met, type SearchProblem } from './search-problem.ts';

/** A set of steps that are done, with what is in the hand and which side is up, reached at a cost. */
interface Node {
  readonly done: number;
  readonly tool: number;
  readonly side: number;
  readonly cost: number;
  /** Cost so far and the least that is still ahead. */
  readonly total: number;
  readonly step: number;
  readonly from: Node | null;
}

export type BestOrder =
  | { readonly found: true; readonly order: readonly number[]; readonly cost: number }
  /** Given up: every way costs at least `bound`. */
  | { readonly found: false; readonly bound: number };

/**
 * The cheapest order to the goal: a dynamic programme over the sets of done steps (Held and Karp, 1962), of which only
 * those are visited that could still be best (A*: Hart, Nilsson and Raphael, 1968). Gives up after `maxSets` sets or
 * when `shouldStop` says so, with a bound. The goal must be reachable.
 */
export function bestOrder(problem: SearchProblem, maxSets: number, shouldStop: () => boolean): BestOrder {
  const settled = new Set<number>();
  const queue = new Heap<Node>((a, b) => a.total < b.total || (a.total === b.total && a.cost > b.cost));
  const { tool, side } = problem.start;
  queue.push({ done: 0, tool, side, cost: 0, total: leastAhead(problem, 0, tool, side), step: -1, from: null });
  for (let node = queue.pop(); node; node = queue.pop()) {
    if (met(problem.goal, node.done)) return { found: true, order: trailOf(node), cost: node.cost };
    if (settled.size >= maxSets || shouldStop()) return { found: false, bound: node.total };
    const key = keyOf(problem, node);
    if (settled.has(key)) continue;
    settled.add(key);
    for (const step of nextSteps(problem, node)) {
      const next = follow(problem, node, step);
      if (!settled.has(keyOf(problem, next))) queue.push(next);
    }
  }
  return { found: false, bound: Infinity };
}

const keyOf = ({ tools }: SearchProblem, { done, tool, side }: Node): number => (done * tools + tool) * 3 + side;

/**
 * The steps worth trying next. An indispensable one that needs neither another tool nor a turning is done at once, alone:
 * moved to here from later in any order, it leaves that order possible and no dearer.
 */
function nextSteps(problem: SearchProblem, node: Node): number[] {
  const ready: number[] = [];
  for (let i = 0; i < problem.steps.length; i++) {
    if ((node.done & (1 << i)) !== 0 || !met(problem.needs[i]!, node.done)) continue;
    const tool = problem.tool[i]!;
    const side = problem.side[i]!;
    const atHand = (tool === 0 || tool === node.tool) && (side === 0 || side === node.side);
    if (atHand && (problem.must & (1 << i)) !== 0) return [i];
    ready.push(i);
  }
  return ready;
}

function follow(problem: SearchProblem, node: Node, step: number): Node {
  const { weights } = problem;
  const tool = problem.tool[step]! || node.tool;
  const side = problem.side[step]! || node.side;
  const changes = (tool === node.tool ? 0 : weights.toolChange) + (side === node.side || node.side === 0 ? 0 : weights.turning);
  const cost = node.cost + problem.work[step]! + changes;
  const done = node.done | (1 << step);
  return { done, tool, side, cost, total: cost + leastAhead(problem, done, tool, side), step, from: node };
}

function trailOf(end: Node): number[] {
  const order: number[] = [];
  for (let node = end; node.from; node = node.from) order.push(node.step);
  return order.toReversed();
}
