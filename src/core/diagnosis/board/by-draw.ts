import type { DeviceModel, Evidence } from '../model.ts';
import type { StateSpace } from '../state-space.ts';
import { changeOf, type Change } from '../stretches.ts';
import type { Transition } from '../transitions.ts';

/** A value by state as one by state and draw, times a factor. */
export function spreadOverDraws(byState: Float64Array, draws: number, factor = 1): Float64Array {
  const result = new Float64Array(byState.length * draws);
  for (let s = 0; s < byState.length; s++) result.fill(byState[s]! * factor, s * draws, (s + 1) * draws);
  return result;
}

export function sumOverDraws(flat: Float64Array, draws: number): Float64Array {
  const result = new Float64Array(flat.length / draws);
  for (let i = 0; i < flat.length; i++) result[Math.floor(i / draws)]! += flat[i]!;
  return result;
}

/** A change of the unit over states and draws. A remedy leaves the board the one it is; after a transplant it may be any. */
export function changeByDraw(
  model: DeviceModel,
  space: StateSpace,
  piece: Extract<Evidence, { kind: 'remedy' | 'transplant' }>,
  draws: number,
): Change {
  const change = changeOf(model, space, piece);
  const over = (transition: Transition): Transition => (piece.kind === 'remedy' ? drawByDraw(transition, draws) : anew(transition, draws));
  return { ...change, transition: over(change.transition), ...(change.unseen ? { unseen: over(change.unseen) } : {}) };
}

function drawByDraw({ forward, backward }: Transition, draws: number): Transition {
  const each = (values: Float64Array, move: (one: Float64Array) => Float64Array): Float64Array => {
    const result = new Float64Array(values.length);
    const size = values.length / draws;
    for (let d = 0; d < draws; d++) {
      const moved = move(Float64Array.from({ length: size }, (_, s) => values[s * draws + d]!));
      for (let s = 0; s < size; s++) result[s * draws + d] = moved[s]!;
    }
    return result;
  };
  return { forward: (weights) => each(weights, forward), backward: (later) => each(later, backward) };
}

function anew({ forward, backward }: Transition, draws: number): Transition {
  return {
    forward: (weights) => spreadOverDraws(forward(sumOverDraws(weights, draws)), draws, 1 / draws),
    backward: (later) => spreadOverDraws(backward(sumOverDraws(later, draws).map((sum) => sum / draws)), draws),
  };
}
