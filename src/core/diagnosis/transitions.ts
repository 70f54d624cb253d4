import type { DeviceModel, Evidence, Remedy } from './model.ts';
import { normalise } from './posterior-over-sets.ts';
import type { StateSpace } from './state-space.ts';

type RemedyOutcome = Extract<Evidence, { kind: 'remedy' }>['outcome'];

/** Chance that work on something else happens to end a trouble that is not in the model. */
const UNKNOWN_MENDED = 0.05;

/** Calls `move` for each way in which a remedy may leave a state: the state it leads to, and its chance. */
function eachLeaving(space: StateSpace, state: number, mends: Float64Array, move: (to: number, chance: number) => void): void {
  if (state === space.unknown) {
    move(space.none, UNKNOWN_MENDED);
    return move(space.unknown, 1 - UNKNOWN_MENDED);
  }
  const [a, b] = space.members[state]!;
  if (a === undefined) return move(space.none, 1);
  const [ma, mb] = [mends[a]!, b === undefined ? 1 : mends[b]!];
  if (b === undefined) {
    move(space.none, ma);
    return move(state, 1 - ma);
  }
  move(space.none, ma * mb);
  move(space.indexOf(b), ma * (1 - mb));
  move(space.indexOf(a), (1 - ma) * mb);
  move(state, (1 - ma) * (1 - mb));
}

/** Chance by fault that a remedy removes it. */
export const mendsByFault = (model: DeviceModel, remedy: Remedy | undefined): Float64Array =>
  Float64Array.from(model.faults, ({ id }) => remedy?.mends[id] ?? 0);

/** Weights after a remedy whose success was not seen; what was at "nothing" afterwards is the chance that the unit now works. */
export function afterRemedy(space: StateSpace, weights: Float64Array, mends: Float64Array): Float64Array {
  const next = new Float64Array(space.size);
  for (let state = 0; state < space.size; state++) {
    const weight = weights[state]!;
    if (weight > 0) eachLeaving(space, state, mends, (to, chance) => (next[to]! += weight * chance));
  }
  return next;
}

/**
 * Weights after a remedy and what was seen right after it, and the chance of seeing that. "Mended" speaks of the trouble that the remedy is for: it says
 * more about the faults that the remedy can remove than about the rest.
 */
export function afterSeenRemedy(
  space: StateSpace,
  weights: Float64Array,
  mends: Float64Array,
  outcome: RemedyOutcome,
): { weights: Float64Array; chance: number } {
  const next = new Float64Array(space.size);
  for (let state = 0; state < space.size; state++) {
    const weight = weights[state]!;
    if (weight === 0) continue;
    eachLeaving(space, state, mends, (to, chance) => (next[to]! += weight * chance * seenChance(space, state, to, mends, outcome)));
  }
  const chance = next.reduce((a, b) => a + b, 0);
  normalise(next, chance);
  return { weights: next, chance };
}

/** Chance of the person's word after work that led from one state to another; common practice, no source. */
function seenChance(space: StateSpace, from: number, to: number, mends: Float64Array, outcome: RemedyOutcome): number {
  if (outcome === 'not-tried-yet') return 1;
  const mended = mendedChance(space, from, to, mends);
  if (outcome === 'mended') return mended;
  return outcome === 'not-mended' ? 0.97 * (1 - mended) : 0.03 * (1 - mended) + 0.005;
}

function mendedChance(space: StateSpace, from: number, to: number, mends: Float64Array): number {
  if (from === space.unknown) return to === space.none ? 0.9 : 0.04;
  const aimedAt = (state: number): boolean => space.members[state]!.some((fault) => mends[fault]! > 0);
  if (to === space.none) return from === space.none ? 0.3 : 0.95;
  if (aimedAt(from) && !aimedAt(to)) return 0.4;
  return 0.03;
}

/**
 * Weights after the blocks came from elsewhere: their faults are gone, and the incoming ones are there with their own chances, independently, as far
 * as a set of two holds them; the little that would be more is spread over the rest. A trouble that is not in the model leaves with its share of the
 * blocks. `incoming` null: the blocks are absent.
 */
export function afterTransplant(
  model: DeviceModel,
  space: StateSpace,
  weights: Float64Array,
  blocks: readonly string[],
  incoming: Readonly<Record<string, number>> | null,
): Float64Array {
  const moved = new Set(blocks);
  const stays = (fault: number): boolean => !moved.has(model.faults[fault]!.block);
  const share = moved.size / Math.max(new Set(model.faults.map((fault) => fault.block)).size, moved.size);
  const left = new Float64Array(space.size);
  space.members.forEach((faults, state) => {
    if (state === space.unknown) {
      left[space.unknown]! += weights[state]! * (1 - share);
      left[space.none]! += weights[state]! * share;
    } else {
      const rest = faults.filter(stays);
      left[space.indexOf(rest[0], rest[1])]! += weights[state]!;
    }
  });
  return incoming === null ? left : withIncoming(model, space, left, incoming);
}

function withIncoming(model: DeviceModel, space: StateSpace, left: Float64Array, incoming: Readonly<Record<string, number>>): Float64Array {
  const comes = model.faults.flatMap(({ id }, fault) =>
    incoming[id] ? [{ fault, odds: incoming[id] / Math.max(1 - incoming[id], 1e-9) }] : [],
  );
  const next = new Float64Array(space.size);
  for (let state = 0; state < space.size; state++) {
    const weight = left[state]!;
    if (weight === 0) continue;
    next[state]! += weight;
    const held = space.members[state]!.length;
    if (state === space.unknown || held === 2) continue;
    comes.forEach(({ fault, odds }, i) => {
      const one = held === 0 ? space.indexOf(fault) : space.indexOf(space.members[state]![0], fault);
      next[one]! += weight * odds;
      if (held === 0) for (const other of comes.slice(i + 1)) next[space.indexOf(fault, other.fault)]! += weight * odds * other.odds;
    });
  }
  normalise(next);
  return next;
}
