/** One action against one of several causes, of which exactly one is there. */
export interface Action {
  readonly id: string;
  /** Chance that this action ends the trouble. */
  readonly chance: number;
  /** In any one unit. */
  readonly cost: number;
}

/**
 * Actions by falling chance per cost: with one cause, independent actions and costs that do not depend on the order, no other order is
 * expected to cost less (exchange argument; e.g. Kadane & Simon, Ann. Statist. 5, 1977). Equal ratios keep their order.
 */
export function orderByChancePerCost<A extends Action>(actions: readonly A[]): A[] {
  return [...actions].sort((a, b) => b.chance * a.cost - a.chance * b.cost);
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
