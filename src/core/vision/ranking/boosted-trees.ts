/**
 * One node of a small decision tree, as numbers: a leaf has only `value`; a split sends a row with `row[feature] < limit` to node `below`, others to `above`
 * (indices in the tree's list).
 */
export type TreeNode =
  { readonly value: number } | { readonly feature: number; readonly limit: number; readonly below: number; readonly above: number };

/** A sum of small trees. The sum, plus `start`, is the log of the odds that a row is real. */
export interface BoostedTrees {
  readonly start: number;
  readonly trees: readonly (readonly TreeNode[])[];
}

/** The log-odds that the trees give a row of features. */
export function logOddsOf({ start, trees }: BoostedTrees, row: ArrayLike<number>): number {
  let sum = start;
  for (const tree of trees) {
    let node = tree[0]!;
    while ('feature' in node) node = tree[row[node.feature]! < node.limit ? node.below : node.above]!;
    sum += node.value;
  }
  return sum;
}

/** The chance that goes with log-odds. */
export const chanceOf = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));
