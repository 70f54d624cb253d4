import { behavioursOf, chanceOf } from './behaviour.ts';
import { findingChances } from './looking.ts';
import { readingLikelihood } from './metering.ts';
import type { DeviceModel, Evidence } from './model.ts';
import { marginals, multiply, normalise } from './posterior-over-sets.ts';
import { stateSpace, type StateSpace } from './state-space.ts';
import { afterSeenRemedy, afterTransplant, mendsByFault } from './transitions.ts';

/** What is believed of a unit now. */
export interface Belief {
  /** Every set of up to two faults with its chance, most likely first; the empty one is "nothing is wrong". */
  readonly sets: readonly { readonly faults: readonly string[]; readonly chance: number }[];
  /** Chance that nothing is wrong. */
  readonly none: number;
  /** Chance of something that is not in the model. */
  readonly unknown: number;
  /** Chance of each fault, alone or with another. */
  readonly marginal: ReadonlyMap<string, number>;
  /** Evidence that all the rest makes unlikely, with its chance given the rest (readings: beside the likeliest reading). */
  readonly odd: readonly { readonly evidenceId: string; readonly chance: number }[];
  /** The same as numbers by state, for what computes on from here. */
  readonly space: StateSpace;
  readonly weights: Float64Array;
  /** Blocks of slots that are empty now. */
  readonly absent: ReadonlySet<string>;
}

/** Evidence less likely than this, given all the rest, is named. */
const ODD = 0.08;

/** Share of a word about a function, or about a place, that an untruthful seller says anyway: each of three, each of fifteen. */
const ANY_WORD = 1 / 3;
const ANY_SIGHT = 1 / 15;

/**
 * The belief in each set of faults after all evidence, oldest first (an exact Bayes filter, see decision 0003): what was said, tried, seen and measured
 * weighs the states at its time; remedies and transplants move weight between them. `without` leaves one piece out.
 */
export function believe(model: DeviceModel, evidence: readonly Evidence[], options: { readonly without?: string } = {}): Belief {
  const filter = new Filter(model);
  for (const piece of evidence) if (piece.id !== options.without) filter.take(piece);
  return filter.belief();
}

interface Weighed {
  readonly evidenceId: string;
  readonly likelihood: Float64Array;
  readonly isReading: boolean;
  /** Given all before it. */
  readonly chance: number;
}

class Filter {
  private readonly space: StateSpace;
  private weights: Float64Array;
  private readonly absent = new Set<string>();
  /** Since the last change of state: these can be left out exactly by dividing them out again. */
  private recent: Weighed[] = [];
  private readonly older: Weighed[] = [];

  constructor(private readonly model: DeviceModel) {
    this.space = stateSpace(model);
    this.weights = priorWeights(model, this.space);
  }

  take(piece: Evidence): void {
    if (piece.kind === 'remedy') this.remedy(piece);
    else if (piece.kind === 'transplant') this.transplant(piece);
    else this.weigh(piece.id, this.likelihood(piece), piece.kind === 'reading');
  }

  private weigh(evidenceId: string, likelihood: Float64Array, isReading: boolean): void {
    const chance = multiply(this.weights, (state) => likelihood[state]!);
    this.recent.push({ evidenceId, likelihood, isReading, chance });
  }

  private likelihood(piece: Exclude<Evidence, { kind: 'remedy' | 'transplant' }>): Float64Array {
    const { model, space, absent } = this;
    if (piece.kind === 'reading') return readingLikelihood(model, space, piece.point, piece.value);
    if (piece.kind === 'finding') return findingChances(model, space, piece.block, piece.sees);
    if (piece.kind === 'claim-place')
      return findingChances(model, space, piece.block, piece.sees).map((p) => mixed(piece.honesty, p, ANY_SIGHT));
    if (piece.kind === 'trial') {
      const behaviours = behavioursOf(model, space, piece.function, piece.with, absent);
      return Float64Array.from(behaviours, (b) => chanceOf(b, piece.outcome));
    }
    const behaviours = behavioursOf(model, space, piece.function, [], absent);
    return Float64Array.from(behaviours, (b) => mixed(piece.honesty, chanceOf(b, piece.says), ANY_WORD));
  }

  private remedy(piece: Extract<Evidence, { kind: 'remedy' }>): void {
    const mends = mendsByFault(
      this.model,
      this.model.remedies.find(({ id }) => id === piece.remedy),
    );
    this.weights = afterSeenRemedy(this.space, this.weights, mends, piece.outcome).weights;
    this.closeStretch();
  }

  private transplant(piece: Extract<Evidence, { kind: 'transplant' }>): void {
    this.weights = afterTransplant(this.model, this.space, this.weights, piece.blocks, piece.incoming);
    for (const block of piece.blocks) {
      if (piece.incoming === null) this.absent.add(block);
      else this.absent.delete(block);
    }
    this.closeStretch();
  }

  private closeStretch(): void {
    this.older.push(...this.recent);
    this.recent = [];
  }

  belief(): Belief {
    const { space, weights, model } = this;
    const names = (faults: readonly number[]): string[] => faults.map((fault) => model.faults[fault]!.id);
    const sets = space.members.flatMap((faults, state) =>
      state === space.unknown ? [] : [{ faults: names(faults), chance: weights[state]! }],
    );
    const byFault = marginals(space.members, weights);
    return {
      sets: sets.sort((a, b) => b.chance - a.chance),
      none: weights[space.none]!,
      unknown: weights[space.unknown]!,
      marginal: new Map(model.faults.map(({ id }, fault) => [id, byFault.get(fault) ?? 0])),
      odd: this.odd(),
      space,
      weights,
      absent: this.absent,
    };
  }

  /** Chance of each piece given all the others of its stretch, and for older stretches given what came before it. */
  private odd(): Belief['odd'] {
    const given = [...this.older.map((w) => ({ w, chance: w.chance })), ...this.recent.map((w) => ({ w, chance: this.leftOut(w) }))];
    return given
      .map(({ w, chance }) => ({ evidenceId: w.evidenceId, chance: w.isReading ? chance / Math.max(...w.likelihood) : chance }))
      .filter(({ chance }) => chance < ODD);
  }

  /** P(e | rest) = 1 / Σ w / L(e): the posterior with e divided out again, summed with e put back. */
  private leftOut({ likelihood }: Weighed): number {
    let sum = 0;
    for (let state = 0; state < this.space.size; state++) if (likelihood[state]! > 0) sum += this.weights[state]! / likelihood[state]!;
    return 1 / sum;
  }
}

const mixed = (honesty: number, ifHonest: number, otherwise: number): number => honesty * ifHonest + (1 - honesty) * otherwise;

/**
 * Before any evidence: faults come independently at their rates, cut off at two at once; "not in the model" has its own rate. Rates are those of units
 * sold as faulty, so nothing more is conditioned on.
 */
function priorWeights(model: DeviceModel, space: StateSpace): Float64Array {
  const odds = model.faults.map(({ rate }) => Math.min(rate, 0.99) / (1 - Math.min(rate, 0.99)));
  const weights = Float64Array.from(space.members, (faults) => faults.reduce((product, fault) => product * odds[fault]!, 1));
  weights[space.unknown] = 0;
  normalise(weights);
  for (let state = 0; state < space.size; state++) weights[state]! *= 1 - model.unknownRate;
  weights[space.unknown] = model.unknownRate;
  return weights;
}
