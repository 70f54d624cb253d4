import { beliefOf, type Belief } from '../belief.ts';
import type { DeviceModel, Evidence } from '../model.ts';
import { oddEvidence } from '../odd-evidence.ts';
import { multiply, normalise } from '../posterior-over-sets.ts';
import { priorWeights } from '../prior.ts';
import { stateSpace, type FaultPair, type StateSpace } from '../state-space.ts';
import { stretchOf, type Stretch } from '../stretches.ts';
import { timesOf } from '../times.ts';
import type { BoardSense } from './board-sense.ts';
import { changeByDraw, spreadOverDraws, sumOverDraws } from './by-draw.ts';
import { growOn } from './grow-on.ts';
import { observationOf, type BoardObservation } from './observed.ts';
import { readingByState } from './reading-by-state.ts';

/** What is believed of a device whose circuit is known. */
export interface BoardBelief extends Belief {
  readonly draws: number;
  /** The weights by state and by drawn board, state by state. */
  readonly byDraw: Float64Array;
  /** Readings since the last change, with the chance that each says nothing of the board, highest first. */
  readonly slips: readonly { readonly evidenceId: string; readonly slip: number }[];
}

export interface BoardOptions {
  /** Faults that a finding makes certain, by place in the model: each other fault is thought of beside them. */
  readonly certain?: readonly number[];
  /** How many other pairs may be thought of. */
  readonly pairs?: number;
}

const PAIRS = 24;

/**
 * The belief in no fault, each fault, the pairs worth thinking of and "not in the model", by Bayes' rule over these and drawn boards: readings of one
 * board share its tolerances, so all of them weigh the same draw. Evidence counts for the state at its time, as `believe` has it; so do remedies and
 * transplants, after which the board that came is another draw. Readings of points that the circuit does not tell of, and all that is seen, tried and
 * said, weigh as they do without a circuit, save that functions behave as it says. Throws DiagnosisError on evidence that names what the model lacks.
 */
export function believeBoard(
  model: DeviceModel,
  evidence: readonly Evidence[],
  sense: BoardSense,
  options: BoardOptions = {},
): BoardBelief {
  const times = timesOf(evidence);
  const seen = times.map(({ observed }) => observationOf(model, sense, observed));
  const sure = pairsWith(options.certain ?? [], model.faults.length);
  const alone = new Filter(model, sense, stateSpace(model, sure), times, seen);
  const limit = options.pairs ?? PAIRS;
  const grown = limit > 0 ? growOn(model, sense, seen, alone.singlesAfter, limit) : [];
  const known = new Set(sure.map(([a, b]) => a * model.faults.length + b));
  const more = grown.filter(([a, b]) => !known.has(a * model.faults.length + b));
  const filter = more.length > 0 ? new Filter(model, sense, stateSpace(model, [...sure, ...more]), times, seen, more) : alone;
  return filter.belief();
}

/** Each certain fault with each other one. */
function pairsWith(certain: readonly number[], count: number): FaultPair[] {
  const pairs = new Map<number, FaultPair>();
  for (const a of certain)
    for (let b = 0; b < count; b++) if (a !== b) pairs.set(Math.min(a, b) * count + Math.max(a, b), a < b ? [a, b] : [b, a]);
  return [...pairs.values()];
}

/** One pass over all evidence on one set of states. */
class Filter {
  /** By time, chance of each row (none and single faults) once its evidence is in. */
  readonly singlesAfter: Float64Array[] = [];
  private readonly draws: number;
  private readonly flat: { readonly size: number };
  private readonly stretches: readonly Stretch[];
  private readonly starts: Float64Array[] = [];
  private readonly weights: Float64Array;

  constructor(
    private readonly model: DeviceModel,
    sense: BoardSense,
    private readonly space: StateSpace,
    private readonly times: ReturnType<typeof timesOf>,
    private readonly seen: readonly BoardObservation[][],
    grown: readonly FaultPair[] = [],
  ) {
    const { draws } = sense.baseline.kernels.dictionary;
    this.draws = draws;
    this.flat = { size: space.size * draws };
    this.stretches = times.map(({ change, absent }, t) => {
      const byState = readingByState(model, sense, space, seen[t]!, grown, absent);
      return stretchOf(this.flat, byState, change && changeByDraw(model, space, change, draws));
    });
    let weights = spreadOverDraws(priorWeights(model, space), draws, 1 / draws);
    for (const { together, change } of this.stretches) {
      this.starts.push(weights.slice());
      multiply(weights, together);
      this.singlesAfter.push(sumOverDraws(weights, draws).subarray(0, 1 + model.faults.length));
      if (!change) continue;
      weights = change.transition.forward(weights);
      normalise(weights);
    }
    this.weights = weights;
  }

  belief(): BoardBelief {
    const { model, space, draws, weights, times } = this;
    const odd = oddEvidence(this.flat, this.stretches, this.starts);
    const belief = beliefOf(model, space, sumOverDraws(weights, draws), times.at(-1)!.absent, odd);
    return { ...belief, draws, byDraw: weights, slips: this.slips() };
  }

  /** Mean share of "it says nothing" in the likelihood of each reading of the last time. */
  private slips(): BoardBelief['slips'] {
    const pieces = this.stretches.at(-1)!.groups.flat();
    return this.seen
      .at(-1)!
      .flatMap((each) => {
        if (each.kind !== 'board') return [];
        const own = pieces.find(({ id }) => id === each.reading.id)!.likelihood;
        let slip = 0;
        for (let i = 0; i < own.length; i++) slip += (this.weights[i]! * each.reading.likelihood.slip) / own[i]!;
        return [{ evidenceId: each.reading.id, slip: Math.min(1, slip) }];
      })
      .sort((a, b) => b.slip - a.slip);
  }
}
