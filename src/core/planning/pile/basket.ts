import type { PartData, Problem } from './problem.ts';

/** One order: what is bought where. */
export interface BasketLine {
  readonly part: number;
  readonly supplier: number;
  readonly count: number;
  readonly costMinor: number;
}

export interface Baskets {
  readonly lines: readonly BasketLine[];
  /** Money that leaves: parts and postage. */
  readonly costMinor: number;
  /** Besides, what waiting for the orders costs. */
  readonly waitMinor: number;
  /** Worth in the drawer of what is left over of stock and minimum quantities. */
  readonly leftMinor: number;
}

/** The sums of the best baskets, without their lines. */
export interface BasketSums {
  readonly costMinor: number;
  readonly waitMinor: number;
  readonly leftMinor: number;
  /** Postage and waiting, which are in the two sums above. */
  readonly perOrderMinor: number;
}

/** Up to so many suppliers every subset is tried; beyond, suppliers are dropped one by one while that saves. */
const EVERY_SUBSET = 5;

/**
 * The cheapest way to cover what is needed from stock and suppliers, each part from one of them; null where no supplier has
 * something that is missing. `needs` by part; negative where parts come off.
 */
export function bestBaskets(problem: Problem, needs: Int32Array): Baskets | null {
  const choice = cheapestSuppliers(problem, needs);
  if (choice === null) return null;
  const lines: BasketLine[] = [];
  let leftMinor = 0;
  problem.parts.forEach((part, p) => {
    const missing = needs[p]! - part.stock;
    const best = missing > 0 ? cheapest(part, missing, choice) : null;
    if (best) lines.push({ part: p, ...best });
    leftMinor += ((best?.count ?? 0) - missing) * part.keptMinor;
  });
  const used = new Set(lines.map(({ supplier }) => supplier));
  const postage = [...used].reduce((sum, s) => sum + problem.suppliers[s]!.postageMinor, 0);
  return {
    lines,
    costMinor: lines.reduce((sum, line) => sum + line.costMinor, postage),
    waitMinor: [...used].reduce((sum, s) => sum + problem.suppliers[s]!.waitMinor, 0),
    leftMinor,
  };
}

/** The set of suppliers, as bits, with the least cost, waiting counted and leftovers taken off. */
function cheapestSuppliers(problem: Problem, needs: Int32Array): number | null {
  const { parts, suppliers } = problem;
  const missing: number[] = [];
  for (let p = 0; p < parts.length; p++) if (needs[p]! > parts[p]!.stock) missing.push(p);
  if (missing.length === 0) return 0;
  const all = 2 ** suppliers.length - 1;
  if (suppliers.length > EVERY_SUBSET) return dropWhileItSaves(problem, needs, missing, all);
  let [best, bestCost]: [number | null, number] = [null, Infinity];
  for (let subset = 1; subset <= all; subset++) {
    const cost = costOf(problem, needs, missing, subset, bestCost);
    if (cost < bestCost) [best, bestCost] = [subset, cost];
  }
  return best;
}

/** The sums alone, for a search that needs nothing else; null where no supplier has something that is missing. */
export function basketSums(problem: Problem, needs: Int32Array): BasketSums | null {
  const subset = cheapestSuppliers(problem, needs);
  if (subset === null) return null;
  const { parts, suppliers } = problem;
  let [costMinor, leftMinor, waitMinor, postage, used] = [0, 0, 0, 0, 0];
  for (let p = 0; p < parts.length; p++) {
    const part = parts[p]!;
    const missing = needs[p]! - part.stock;
    if (missing <= 0) leftMinor -= missing * part.keptMinor;
    else {
      const { supplier, count, costMinor: cost } = cheapest(part, missing, subset)!;
      costMinor += cost;
      leftMinor += (count - missing) * part.keptMinor;
      used |= 1 << supplier;
    }
  }
  for (let s = 0; s < suppliers.length; s++) {
    if (!(used & (1 << s))) continue;
    postage += suppliers[s]!.postageMinor;
    waitMinor += suppliers[s]!.waitMinor;
  }
  return { costMinor: costMinor + postage, waitMinor, leftMinor, perOrderMinor: postage + waitMinor };
}

function dropWhileItSaves(problem: Problem, needs: Int32Array, missing: readonly number[], all: number): number | null {
  let [subset, cost] = [all, costOf(problem, needs, missing, all, Infinity)];
  if (cost === Infinity) return null;
  for (;;) {
    const fewer = problem.suppliers.flatMap((_, s) => (subset & (1 << s) ? [subset & ~(1 << s)] : []));
    const costs = fewer.map((each) => costOf(problem, needs, missing, each, Infinity));
    const least = Math.min(...costs);
    if (!(least < cost)) return subset;
    [subset, cost] = [fewer[costs.indexOf(least)]!, least];
  }
}

/** What a set of suppliers costs; Infinity where it lacks something. */
function costOf({ parts, suppliers }: Problem, needs: Int32Array, missing: readonly number[], subset: number, worst: number): number {
  let [sum, used] = [0, 0];
  for (const p of missing) {
    const { stock, keptMinor, offers } = parts[p]!;
    let [best, supplier] = [Infinity, -1];
    for (let s = 0; s < offers.length; s++) {
      const offer = offers[s];
      if (!offer || !(subset & (1 << s))) continue;
      const net = Math.max(needs[p]! - stock, offer.least) * (offer.unitMinor - keptMinor);
      if (net < best) [best, supplier] = [net, s];
    }
    sum += best;
    if (supplier < 0 || (keptMinor === 0 && sum >= worst)) return Infinity;
    used |= 1 << supplier;
  }
  for (let s = 0; s < suppliers.length; s++) if (used & (1 << s)) sum += suppliers[s]!.postageMinor + suppliers[s]!.waitMinor;
  return sum;
}

function cheapest(part: PartData, missing: number, subset: number): { supplier: number; count: number; costMinor: number } | null {
  let best: { supplier: number; count: number; costMinor: number } | null = null;
  let bestNet = Infinity;
  for (let s = 0; s < part.offers.length; s++) {
    const offer = part.offers[s];
    if (!offer || !(subset & (1 << s))) continue;
    const count = Math.max(missing, offer.least);
    const costMinor = count * offer.unitMinor;
    const net = costMinor - count * part.keptMinor;
    if (net < bestNet) [best, bestNet] = [{ supplier: s, count, costMinor }, net];
  }
  return best;
}
