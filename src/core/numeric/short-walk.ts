/** What going from one stop to another takes, the same both ways; -1 is where the walk starts. */
export type WalkCost = (from: number, to: number) => number;

/**
 * An order of n stops, as their numbers from 0, in which a walk from the start through all of them, with a free end, costs little. From several first stops the
 * nearest one is taken next; then stretches are turned round (Croes 1958) and short ones moved elsewhere (Or 1976) as long as that saves anything, and the
 * best of these walks is kept. It is short, and for a few stops mostly the shortest, but not proved to be.
 */
export function shortWalk(count: number, cost: WalkCost): number[] {
  const firsts = Array.from({ length: count }, (_, i) => i).toSorted((a, b) => cost(-1, a) - cost(-1, b));
  let best: number[] = [];
  let least = Infinity;
  for (const first of firsts.slice(0, STARTS)) {
    const order = nearestNext(count, cost, first);
    while (turnRound(order, cost) || moveElsewhere(order, cost));
    const length = lengthOf(order, cost);
    if (length < least) [best, least] = [order, length];
  }
  return best;
}

const STARTS = 12;
/** What saves less than this saves nothing. */
const SAVES = 1e-9;
/** Stretches of up to so many stops are moved. */
const LONGEST_MOVED = 3;

/** What a walk through the stops in this order costs. */
export function lengthOf(order: readonly number[], cost: WalkCost): number {
  let [sum, at] = [0, -1];
  for (const next of order) {
    sum += cost(at, next);
    at = next;
  }
  return sum;
}

function nearestNext(count: number, cost: WalkCost, first: number): number[] {
  const left = new Set(Array.from({ length: count }, (_, i) => i));
  const order = [first];
  left.delete(first);
  while (left.size > 0) {
    const at = order.at(-1)!;
    const next = [...left].reduce((best, each) => (cost(at, each) < cost(at, best) ? each : best));
    left.delete(next);
    order.push(next);
  }
  return order;
}

/** Cost of a step; none beyond its free end. */
const step = (cost: WalkCost, from: number, to: number | undefined): number => (to === undefined ? 0 : cost(from, to));

/** Turns round every stretch that becomes shorter by it; true where there was one. */
function turnRound(order: number[], cost: WalkCost): boolean {
  let isBetter = false;
  for (let i = 0; i < order.length - 1; i++) {
    for (let j = i + 1; j < order.length; j++) {
      const before = order[i - 1] ?? -1;
      const [first, last, after] = [order[i]!, order[j]!, order[j + 1]];
      const now = cost(before, first) + step(cost, last, after);
      const then = cost(before, last) + step(cost, first, after);
      if (then >= now - SAVES) continue;
      order.splice(i, j - i + 1, ...order.slice(i, j + 1).toReversed());
      isBetter = true;
    }
  }
  return isBetter;
}

/** Moves the first short stretch that stands better elsewhere, either way round; true where there was one. */
function moveElsewhere(order: number[], cost: WalkCost): boolean {
  for (let size = 1; size <= LONGEST_MOVED; size++) {
    for (let i = 0; i + size <= order.length; i++) {
      const stretch = order.slice(i, i + size);
      const rest = [...order.slice(0, i), ...order.slice(i + size)];
      const [first, last] = [stretch[0]!, stretch.at(-1)!];
      const gap = between(rest, cost, i, first, last) - between(rest, cost, i, null, null);
      for (let at = 0; at <= rest.length; at++) {
        const open = between(rest, cost, at, null, null);
        const forth = between(rest, cost, at, first, last) - open;
        const back = between(rest, cost, at, last, first) - open;
        if (Math.min(forth, back) >= gap - SAVES) continue;
        rest.splice(at, 0, ...(forth <= back ? stretch : stretch.toReversed()));
        order.splice(0, order.length, ...rest);
        return true;
      }
    }
  }
  return false;
}

/** Cost of the steps at a gap of a walk: as it is, or to the first and from the last stop of a stretch that is put there. */
function between(rest: readonly number[], cost: WalkCost, at: number, first: number | null, last: number | null): number {
  const [before, after] = [rest[at - 1] ?? -1, rest[at]];
  if (first === null || last === null) return step(cost, before, after);
  return cost(before, first) + step(cost, last, after);
}
