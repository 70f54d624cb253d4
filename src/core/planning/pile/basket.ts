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
  const missing = problem.parts.flatMap((part, p) => (needs[p]! > part.stock ? [p] : []));
  if (missing.length === 0) return 0;
  const all = 2 ** problem.suppliers.length - 1;
  if (problem.suppliers.length <= EVERY_SUBSET) {
    let [best, bestCost]: [number | null, number] = [null, Infinity];
    for (let subset = 1; subset <= all; subset++) {
      const cost = costOf(problem, needs, missing, subset);
      if (cost < bestCost) [best, bestCost] = [subset, cost];
    }
    return best;
  }
  let [subset, cost] = [all, costOf(problem, needs, missing, all)];
  if (cost === Infinity) return null;
  for (;;) {
    const fewer = problem.suppliers.flatMap((_, s) => (subset & (1 << s) ? [subset & ~(1 << s)] : []));
    const costs = fewer.map((each) => costOf(problem, needs, missing, each));
    const least = Math.min(...costs);
    if (!(least < cost)) return subset;
    [subset, cost] = [fewer[costs.indexOf(least)]!, least];
  }
}

function costOf(problem: Problem, needs: Int32Array, missing: readonly number[], subset: number): number {
  let [sum, used] = [0, 0];
  for (const p of missing) {
    const part = problem.parts[p]!;
    const best = cheapest(part, needs[p]! - part.stock, subset);
    if (!best) return Infinity;
    sum += best.costMinor - best.count * part.keptMinor;
    used |= 1 << best.supplier;
  }
  for (let s = 0; s < problem.suppliers.length; s++) {
    if (used & (1 << s)) sum += problem.suppliers[s]!.postageMinor + problem.suppliers[s]!.waitMinor;
  }
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
