import { bestOrder, type BestOrder } from './best-order.ts';
import { effortOf, EMPTY_HANDS, leastForAll, USUAL_WEIGHTS, type Effort, type Stance, type Weights } from './effort.ts';
import { leastWay } from './least-way.ts';
import { quickOrder } from './quick-order.ts';
import { contributing, indispensable, reachable } from './reachable.ts';
import { searchProblem } from './search-problem.ts';
import { isMet, namesIn, stepsById, type Need, type Step } from './step.ts';
import { TeardownError } from './teardown-error.ts';

/** Up to so many steps that could contribute, the order is proved best. */
export const EXACT_STEPS = 25;
/** Sets of done steps looked at before a proof is given up. */
const MAX_SETS = 1_000_000;

export interface PlanOptions {
  readonly weights?: Weights;
  readonly start?: Stance;
  /** Steps that are done already. */
  readonly done?: ReadonlySet<string>;
  readonly maxSets?: number;
  readonly shouldStop?: () => boolean;
}

export type StepPlan =
  | {
      readonly ok: true;
      readonly order: readonly Step[];
      readonly effort: Effort;
      /** No way costs less than this; equal to the cost when the order is proved best. */
      readonly bound: number;
      readonly exact: boolean;
    }
  /** The needs of the goal that no order of steps can meet. */
  | { readonly ok: false; readonly code: 'goal-out-of-reach'; readonly unmet: readonly Need[] };

/**
 * The fewest and safest steps to the goal, in the order with the least changing of tools and turning over: the order of
 * least cost, where minutes, steps, risk, changes and turnings are all weighed in minutes. Proved best for up to
 * `EXACT_STEPS` contributing steps; beyond, or when stopped, a good order with a bound on how much better one could be.
 * Throws `TeardownError` on steps that do not hang together or a goal that names no step.
 */
export function planSteps(steps: readonly Step[], goal: readonly Need[], options: PlanOptions = {}): StepPlan {
  const { weights = USUAL_WEIGHTS, start = EMPTY_HANDS, done = new Set<string>(), maxSets = MAX_SETS } = options;
  const byId = stepsById(steps);
  for (const id of [...goal.flatMap(namesIn), ...done]) if (!byId.has(id)) throw new TeardownError('unknown-step', `"${id}" is no step`);
  const can = reachable(steps, done);
  const unmet = goal.filter((need) => !isMet(need, can));
  if (unmet.length > 0) return { ok: false, code: 'goal-out-of-reach', unmet };
  const open = contributing(byId, goal, done);
  const planned = (order: readonly Step[], bound?: number): StepPlan => {
    const effort = effortOf(order, weights, start);
    return { ok: true, order, effort, bound: bound ?? effort.cost, exact: bound === undefined };
  };
  const quick = quickOrder(open, goal, done, start, weights);
  const stop = { maxSets, shouldStop: options.shouldStop ?? (() => false) };
  const improved = (of: readonly Step[]): BestOrder =>
    bestOrder(searchProblem(of, goal, done, start, weights), stop.maxSets, stop.shouldStop);
  if (open.length <= EXACT_STEPS) {
    const best = improved(open);
    return best.found ? planned(best.order.map((i) => open[i]!)) : planned(quick, best.bound);
  }
  // Of too many steps those of the quick way are still put in their best order, when they are few enough.
  const best = quick.length <= EXACT_STEPS ? improved(quick) : undefined;
  const order = best?.found ? best.order.map((i) => quick[i]!) : quick;
  const must = leastForAll(open.filter(mustOf(open, goal, done)), start, weights);
  return planned(order, Math.max(must, leastWay(open, goal, done, weights)));
}

function mustOf(open: readonly Step[], goal: readonly Need[], done: ReadonlySet<string>): (step: Step) => boolean {
  const must = indispensable(open, goal, done);
  return ({ id }) => must.has(id);
}
