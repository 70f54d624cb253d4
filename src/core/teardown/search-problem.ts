import { workOf, type Stance, type Weights } from './effort.ts';
import { indispensable } from './reachable.ts';
import { isMet, namesIn, type Need, type Step } from './step.ts';

/** Steps, needs, tools and sides as bits and small numbers, for at most 31 steps. Tool 0 is none, side 0 is either. */
export interface SearchProblem {
  readonly steps: readonly Step[];
  readonly work: readonly number[];
  /** Each need of each step as the bits of the steps any of which meets it; what is done before is left out. */
  readonly needs: readonly (readonly number[])[];
  readonly goal: readonly number[];
  readonly tool: readonly number[];
  readonly side: readonly number[];
  readonly tools: number;
  /** Steps that every way to the goal uses. */
  readonly must: number;
  readonly start: { readonly tool: number; readonly side: number };
  readonly weights: Weights;
}

const SIDES = { front: 1, back: 2 } as const;

/** The problem of the steps that may contribute, from a stance on, with `done` behind. */
export function searchProblem(
  steps: readonly Step[],
  goal: readonly Need[],
  done: ReadonlySet<string>,
  start: Stance,
  weights: Weights,
): SearchProblem {
  const bit = new Map(steps.map(({ id }, i) => [id, 1 << i]));
  const bits = (need: Need): number => namesIn(need).reduce((mask, id) => mask | (bit.get(id) ?? 0), 0);
  const open = (needs: readonly Need[]): number[] => needs.filter((need) => !isMet(need, done)).map(bits);
  const names = [...new Set([start.tool, ...steps.map(({ tool }) => tool)].filter((tool) => tool !== null))];
  const toolNumber = (tool: string | null): number => (tool === null ? 0 : names.indexOf(tool) + 1);
  const needed = indispensable(steps, goal, done);
  return {
    steps,
    work: steps.map((step) => workOf(step, weights)),
    needs: steps.map((step) => open(step.needs)),
    goal: open(goal),
    tool: steps.map((step) => toolNumber(step.tool)),
    side: steps.map((step) => (step.side === null ? 0 : SIDES[step.side])),
    tools: names.length + 1,
    must: steps.reduce((mask, { id }, i) => (needed.has(id) ? mask | (1 << i) : mask), 0),
    start: { tool: toolNumber(start.tool), side: start.side === null ? 0 : SIDES[start.side] },
    weights,
  };
}

/** Whether all of these needs are met by the done bits. */
export const met = (needs: readonly number[], done: number): boolean => needs.every((any) => (any & done) !== 0);

/**
 * Less than or equal to what any way on from here costs: the indispensable steps that are left, each of their tools
 * taken up once, and the device turned once where they ask for the side that is not up. Never falls by more than a step costs.
 */
export function leastAhead(problem: SearchProblem, done: number, tool: number, side: number): number {
  const { work, weights } = problem;
  let [sum, tools, sides] = [0, 0, 0];
  for (let left = problem.must & ~done; left !== 0; left &= left - 1) {
    const i = 31 - Math.clz32(left & -left);
    sum += work[i]!;
    tools |= 1 << problem.tool[i]!;
    sides |= 1 << problem.side[i]!;
  }
  const changes = countBits(tools & ~1 & ~(1 << tool));
  const other = side === 0 ? (sides & 6) === 6 : (sides & 6 & ~(1 << side)) !== 0;
  return sum + changes * weights.toolChange + (other ? weights.turning : 0);
}

function countBits(mask: number): number {
  let count = 0;
  for (let left = mask; left !== 0; left &= left - 1) count++;
  return count;
}
