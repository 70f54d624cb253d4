import type { DeviceModel, Evidence } from './model.ts';
import { DiagnosisError } from './posterior-over-sets.ts';
import type { FaultPair, StateSpace } from './state-space.ts';

type RemedyOutcome = Extract<Evidence, { kind: 'remedy' }>['outcome'];

/** A change of the unit: moves weights on, and carries the chance of what comes later back (its transpose). Neither normalises. */
export interface Transition {
  forward(weights: Float64Array): Float64Array;
  backward(later: Float64Array): Float64Array;
}

/** Damage done by work may be anything: after "made worse" this share of each state is a trouble that is not in the model. */
const WORSE_UNKNOWN = 0.5;
const WORSE_CHANCE = 0.04;

/** A remedy and what was seen right after it. Throws DiagnosisError on a remedy that the model lacks. */
export function remedyTransition(model: DeviceModel, space: StateSpace, remedyId: string, outcome: RemedyOutcome): Transition {
  const remedy = model.remedies.find(({ id }) => id === remedyId);
  if (!remedy) throw new DiagnosisError('unknown-name', `the model has no remedy "${remedyId}"`);
  const mends = Float64Array.from(model.faults, ({ id }) => remedy.mends[id] ?? 0);
  const each = (state: number, move: (to: number, chance: number) => void): void =>
    eachLeaving(space, state, mends, (to, chance) => {
      const seen = chance * seenChance(space, state, to, outcome);
      if (outcome !== 'made-worse') return move(to, seen);
      move(to, seen * (1 - WORSE_UNKNOWN));
      move(space.unknown, seen * WORSE_UNKNOWN);
    });
  return {
    forward(weights) {
      const next = new Float64Array(space.size);
      for (let s = 0; s < space.size; s++) each(s, (to, chance) => (next[to]! += weights[s]! * chance));
      return next;
    },
    backward(later) {
      const before = new Float64Array(space.size);
      for (let s = 0; s < space.size; s++) each(s, (to, chance) => (before[s]! += chance * later[to]!));
      return before;
    },
  };
}

/** Calls `move` for each way in which a remedy may leave a state: the state it leads to, and its chance. */
function eachLeaving(space: StateSpace, state: number, mends: Float64Array, move: (to: number, chance: number) => void): void {
  const [a, b] = [space.first[state]!, space.second[state]!];
  if (a < 0) return move(state, 1);
  const ma = mends[a]!;
  if (b < 0) {
    if (ma > 0) move(space.none, ma);
    return move(state, 1 - ma);
  }
  const mb = mends[b]!;
  if (ma * mb > 0) move(space.none, ma * mb);
  if (ma > 0) move(space.indexOf(b), ma * (1 - mb));
  if (mb > 0) move(space.indexOf(a), (1 - ma) * mb);
  move(state, (1 - ma) * (1 - mb));
}

/** Chance of the person's word after work that led from one state to another; common practice, no source. */
function seenChance(space: StateSpace, from: number, to: number, outcome: RemedyOutcome): number {
  if (outcome === 'not-tried-yet') return 1;
  if (outcome === 'made-worse') return WORSE_CHANCE;
  const mended = mendedChance(space, from, to);
  return outcome === 'mended' ? mended : 1 - WORSE_CHANCE - mended;
}

/** "Mended" is mostly said of a unit that works now, sometimes where one trouble of two is gone, seldom by mistake. */
function mendedChance(space: StateSpace, from: number, to: number): number {
  if (to === space.unknown) return 0.1;
  if (to === space.none) return 0.93;
  return from === to ? 0.03 : 0.4;
}

/**
 * Blocks that come from elsewhere: their faults are gone, and the incoming ones are there with their own chances,
 * independently, given that no more than two faults are there in all (what would be more is spread over the rest). A trouble
 * that is not in the model leaves with the blocks in proportion to their number. `incoming` null leaves the slot empty.
 */
export function transplantTransition(
  model: DeviceModel,
  space: StateSpace,
  blocks: readonly string[],
  incoming: Readonly<Record<string, number>> | null,
): Transition {
  const moved = new Set(blocks);
  const remains = stateWithout(model, space, moved);
  const share = moved.size / new Set([...blocksOf(model), ...moved]).size;
  const comes = incomingOdds(model, space, moved, incoming ?? {});
  return {
    forward(weights) {
      const left = new Float64Array(space.size);
      for (let s = 0; s < space.size; s++) left[remains[s]!]! += weights[s]!;
      const gone = weights[space.unknown]! * share;
      left[space.unknown]! -= gone;
      left[space.none]! += gone;
      const next = new Float64Array(space.size);
      for (let s = 0; s < space.size; s++)
        if (left[s]! > 0) eachArriving(space, s, comes, (to, chance) => (next[to]! += left[s]! * chance));
      return next;
    },
    backward(later) {
      const ahead = new Float64Array(space.size);
      const holders = new Set(remains);
      for (const s of holders) eachArriving(space, s, comes, (to, chance) => (ahead[s]! += chance * later[to]!));
      const before = Float64Array.from(remains, (s) => ahead[s]!);
      before[space.unknown] = share * ahead[space.none]! + (1 - share) * ahead[space.unknown]!;
      return before;
    },
  };
}

/** Every block that the model speaks of. */
function blocksOf(model: DeviceModel): Set<string> {
  return new Set([
    ...model.faults.map(({ block }) => block),
    ...model.functions.flatMap(({ needs }) => needs.flat()),
    ...model.points.map(({ block }) => block),
  ]);
}

/** For each state the one that is left when the faults of these blocks go. */
function stateWithout(model: DeviceModel, space: StateSpace, blocks: ReadonlySet<string>): Int32Array {
  const stays = model.faults.map((fault) => !blocks.has(fault.block));
  return Int32Array.from(space.members, (faults, state) => {
    if (state === space.unknown) return state;
    const rest = faults.filter((fault) => stays[fault]);
    return space.indexOf(rest[0], rest[1]);
  });
}

/** Faults that may come, with their odds, the pairs of them that are thought of, and the sum of the odds of all singles and of all such pairs. */
interface Incoming {
  readonly faults: readonly number[];
  readonly odds: readonly number[];
  readonly oddsOf: ReadonlyMap<number, number>;
  readonly together: readonly FaultPair[];
  readonly singles: number;
  readonly pairs: number;
}

function incomingOdds(
  model: DeviceModel,
  space: StateSpace,
  moved: ReadonlySet<string>,
  incoming: Readonly<Record<string, number>>,
): Incoming {
  const faults = [...model.faults.keys()].filter((fault) => {
    const { id, block } = model.faults[fault]!;
    return moved.has(block) && (incoming[id] ?? 0) > 0;
  });
  const odds = faults.map((fault) => {
    const chance = Math.min(incoming[model.faults[fault]!.id]!, 0.999);
    return chance / (1 - chance);
  });
  const oddsOf = new Map(faults.map((fault, i) => [fault, odds[i]!]));
  const together = space.only ? space.only.filter(([a, b]) => oddsOf.has(a) && oddsOf.has(b)) : allPairs(faults);
  const singles = odds.reduce((sum, each) => sum + each, 0);
  const pairs = together.reduce((sum, [a, b]) => sum + oddsOf.get(a)! * oddsOf.get(b)!, 0);
  return { faults, odds, oddsOf, together, singles, pairs };
}

const allPairs = (faults: readonly number[]): FaultPair[] => faults.flatMap((a, i) => faults.slice(i + 1).map((b): FaultPair => [a, b]));

/**
 * Calls `move` for each state that incoming faults may make of what was left, and its chance; the chances sum to 1. Pairs that are not thought of share
 * their chance among the others.
 */
function eachArriving(space: StateSpace, state: number, comes: Incoming, move: (to: number, chance: number) => void): void {
  const held = space.first[state]!;
  if (state === space.unknown || space.second[state]! >= 0) return move(state, 1);
  const { faults, oddsOf, odds, singles, pairs } = comes;
  if (held >= 0) {
    const ends = faults.map((fault) => space.indexOf(held, fault));
    const all = 1 + odds.reduce((sum, each, i) => (ends[i]! < 0 ? sum : sum + each), 0);
    move(state, 1 / all);
    ends.forEach((to, i) => to >= 0 && move(to, odds[i]! / all));
    return;
  }
  const all = 1 + singles + pairs;
  move(state, 1 / all);
  faults.forEach((fault, i) => move(space.indexOf(fault), odds[i]! / all));
  for (const [a, b] of comes.together) move(space.indexOf(a, b), (oddsOf.get(a)! * oddsOf.get(b)!) / all);
}
