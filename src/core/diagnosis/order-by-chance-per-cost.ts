/** One action against one of several causes, of which exactly one is there. */
export interface Action {
  readonly id: string;
  /** Chance that this action ends the trouble. */
  readonly chance: number;
  /** In any one unit; not negative. */
  readonly cost: number;
}

/**
 * Actions by falling chance per cost, free ones first: with one cause, independent actions and costs that do not depend on the
 * order, no other order is expected to cost less (exchange argument; e.g. Kadane & Simon, Ann. Statist. 5, 1977, from memory).
 * Equal ratios keep their order.
 */
export function orderByChancePerCost<A extends Action>(actions: readonly A[]): A[] {
  const ratio = ({ chance, cost }: Action): number => (cost > 0 ? chance / cost : Infinity);
  return [...actions].sort((a, b) => (ratio(a) === ratio(b) ? 0 : ratio(b) - ratio(a)));
}

/** Expected cost of trying the actions in this order until one helps: each is paid for with the chance that none before it did. */
export function expectedCost(order: readonly Action[]): number {
  let cost = 0;
  let left = 1;
  for (const action of order) {
    cost += left * action.cost;
    left -= action.chance;
  }
  return cost;
}
