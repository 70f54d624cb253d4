import { beliefOf } from '../belief.ts';
import type { DeviceModel } from '../model.ts';
import { normalise } from '../posterior-over-sets.ts';
import { stateSpace, type FaultPair } from '../state-space.ts';
import type { BoardBelief } from './believe-board.ts';

/** The likely part of a belief, with the model of only the faults in it. */
export interface LikelyPart {
  readonly model: DeviceModel;
  readonly belief: BoardBelief;
  /** By fault of the smaller model, its place in the whole one. */
  readonly places: readonly number[];
}

/**
 * The belief without the least likely faults, which together have no more than `left` of the chance; sets with one of these are left out and the rest is
 * scaled to 1. What looks ahead from a belief looks at every state many times, and most of a board's states are next to impossible after some readings.
 */
export function likelyPart(model: DeviceModel, belief: BoardBelief, left: number): LikelyPart {
  const kept = keptFaults(model, belief, left);
  if (kept.length === model.faults.length) return { model, belief, places: kept };
  const at = new Map(kept.map((place, i) => [place, i]));
  const { space, draws } = belief;
  const pairs: FaultPair[] = [];
  const states: number[] = [space.none, ...kept.map((place) => space.indexOf(place))];
  for (let s = 1 + space.faults; s < space.unknown; s++) {
    const [a, b] = [at.get(space.first[s]!), at.get(space.second[s]!)];
    if (a === undefined || b === undefined) continue;
    pairs.push([a, b]);
    states.push(s);
  }
  states.push(space.unknown);
  const smaller = { ...model, faults: kept.map((place) => model.faults[place]!) };
  const weights = Float64Array.from(states, (s) => belief.weights[s]!);
  const total = weights.reduce((sum, each) => sum + each, 0);
  normalise(weights, total);
  const byDraw = new Float64Array(states.length * draws);
  states.forEach((s, i) => {
    for (let d = 0; d < draws; d++) byDraw[i * draws + d] = belief.byDraw[s * draws + d]! / total;
  });
  const part = beliefOf(smaller, stateSpace(smaller, pairs), weights, belief.absent, belief.odd);
  return { model: smaller, belief: { ...part, draws, byDraw, slips: belief.slips }, places: kept };
}

/** Places of the faults that are kept, in the order of the model. */
function keptFaults({ faults }: DeviceModel, { marginal }: BoardBelief, left: number): number[] {
  const chance = (place: number): number => marginal.get(faults[place]!.id)!;
  const rising = [...faults.keys()].sort((a, b) => chance(a) - chance(b));
  let dropped = 0;
  const gone = new Set<number>();
  for (const place of rising) {
    dropped += chance(place);
    if (dropped > left) break;
    gone.add(place);
  }
  return [...faults.keys()].filter((place) => !gone.has(place));
}
