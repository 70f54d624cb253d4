import { chanceOf, type BoostedTrees, type TreeNode } from './boosted-trees.ts';

/** How trees are grown. */
export interface Growing {
  readonly trees: number;
  readonly depth: number;
  /** Share of each tree's answer that counts. */
  readonly rate: number;
  /** Least sum of p·(1−p) in a leaf: small leaves say little. */
  readonly leastWeight: number;
  /** Draws leaves towards zero, in the same unit. */
  readonly towardsZero: number;
}

export const GROWING: Growing = { trees: 80, depth: 3, rate: 0.1, leastWeight: 2, towardsZero: 2 };

/**
 * Trees that tell real rows from others, by gradient boosting of the logistic loss with second-order leaf values
 * (J. Friedman, Annals of Statistics 29 (2001), algorithm 5; leaf value and gain with a penalty after T. Chen, C. Guestrin, KDD 2016, eq. 5 and 7).
 * Splits are sought between up to 48 quantiles of each feature. No chance in it: the same rows give the same trees.
 */
export function growBoostedTrees(rows: readonly Float32Array[], real: readonly boolean[], growing: Growing = GROWING): BoostedTrees {
  const positive = real.filter(Boolean).length;
  const start = Math.log((positive + 1) / (rows.length - positive + 1));
  const odds = new Float64Array(rows.length).fill(start);
  const limits = limitsOf(rows);
  const trees: TreeNode[][] = [];
  for (let t = 0; t < growing.trees; t++) {
    const slope = odds.map((o, i) => Number(real[i]) - chanceOf(o));
    const bend = odds.map((o) => chanceOf(o) * (1 - chanceOf(o)));
    const tree: TreeNode[] = [];
    const grow = (members: readonly number[], depth: number): number => {
      const at = tree.length;
      tree.push({ value: 0 });
      const split = depth > 0 ? bestSplit(rows, limits, members, slope, bend, growing) : undefined;
      if (!split) {
        tree[at] = { value: growing.rate * leafValue(members, slope, bend, growing) };
        return at;
      }
      const below = grow(
        members.filter((i) => rows[i]![split.feature]! < split.limit),
        depth - 1,
      );
      const above = grow(
        members.filter((i) => !(rows[i]![split.feature]! < split.limit)),
        depth - 1,
      );
      tree[at] = { ...split, below, above };
      return at;
    };
    grow([...rows.keys()], growing.depth);
    trees.push(tree);
    for (let i = 0; i < rows.length; i++) odds[i]! += valueIn(tree, rows[i]!);
  }
  return { start, trees };
}

function valueIn(tree: readonly TreeNode[], row: Float32Array): number {
  let node = tree[0]!;
  while ('feature' in node) node = tree[row[node.feature]! < node.limit ? node.below : node.above]!;
  return node.value;
}

function leafValue(members: readonly number[], slope: Float64Array, bend: Float64Array, { towardsZero }: Growing): number {
  let g = 0;
  let h = 0;
  for (const i of members) {
    g += slope[i]!;
    h += bend[i]!;
  }
  return g / (h + towardsZero);
}

/** Limits to try, per feature: quantiles of the rows, rounded to what a stored number keeps. */
function limitsOf(rows: readonly Float32Array[]): number[][] {
  const features = rows[0]?.length ?? 0;
  return Array.from({ length: features }, (_, f) => {
    const values = rows.map((row) => row[f]!).sort((a, b) => a - b);
    const picked = Array.from({ length: 48 }, (__, q) => Number(values[Math.floor(((q + 0.5) * values.length) / 48)]!.toPrecision(5)));
    return [...new Set(picked)];
  });
}

function bestSplit(
  rows: readonly Float32Array[],
  limits: readonly number[][],
  members: readonly number[],
  slope: Float64Array,
  bend: Float64Array,
  { leastWeight, towardsZero }: Growing,
): { feature: number; limit: number } | undefined {
  let best: { feature: number; limit: number } | undefined;
  let g = 0;
  let h = 0;
  for (const i of members) {
    g += slope[i]!;
    h += bend[i]!;
  }
  let bestGain = (g * g) / (h + towardsZero) + 1e-9;
  for (let feature = 0; feature < limits.length; feature++) {
    const cuts = limits[feature]!;
    const gs = new Float64Array(cuts.length + 1);
    const hs = new Float64Array(cuts.length + 1);
    for (const i of members) {
      const bin = binOf(cuts, rows[i]![feature]!);
      gs[bin]! += slope[i]!;
      hs[bin]! += bend[i]!;
    }
    let gBelow = 0;
    let hBelow = 0;
    for (let c = 0; c < cuts.length; c++) {
      gBelow += gs[c]!;
      hBelow += hs[c]!;
      if (hBelow < leastWeight || h - hBelow < leastWeight) continue;
      const gain = gBelow ** 2 / (hBelow + towardsZero) + (g - gBelow) ** 2 / (h - hBelow + towardsZero);
      if (gain > bestGain) {
        bestGain = gain;
        best = { feature, limit: cuts[c]! };
      }
    }
  }
  return best;
}

/** How many cuts a value is not below. */
function binOf(cuts: readonly number[], value: number): number {
  let low = 0;
  let high = cuts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (value < cuts[middle]!) high = middle;
    else low = middle + 1;
  }
  return low;
}
