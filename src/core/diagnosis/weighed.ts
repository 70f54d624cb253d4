import { behavioursOf } from './behaviour.ts';
import { findingChances, NOTHING_WRONG } from './looking.ts';
import { pointOf, readingLikelihood, sameBandChances } from './metering.ts';
import type { Behaviour, DeviceModel, Evidence } from './model.ts';
import type { StateSpace } from './state-space.ts';

/** Evidence that tells of the state at its time without changing it. */
export type Observation = Exclude<Evidence, { kind: 'remedy' | 'transplant' }>;

/** One observation, weighed in every state. */
export interface Weighed {
  readonly id: string;
  /** Observations of the same key are repetitions of each other. */
  readonly key: string;
  readonly likelihood: Float64Array;
  /** Chance of just that, by state; for a reading, of its band. */
  readonly chance: Float64Array;
  /** Of trials: what was noted, and the likelihood of "comes and goes". */
  readonly trial?: { readonly outcome: Behaviour; readonly mixed: Float64Array };
}

/** What a seller says who does not say the truth; common practice, no source: junk is sold as failing. */
const SAID_ANYWAY: Readonly<Record<Behaviour, number>> = { works: 0.35, 'comes-and-goes': 0.15, fails: 0.5 };
const SEEN_ANYWAY = { nothing: 0.3, something: 0.1 };

/** The likelihood of an observation in each state. Throws DiagnosisError on a function or point that the model lacks. */
export function weigh(model: DeviceModel, space: StateSpace, piece: Observation, absent: ReadonlySet<string>): Weighed {
  const key = keyOf(piece);
  const of = (likelihood: Float64Array): Weighed => ({ id: piece.id, key, likelihood, chance: likelihood });
  switch (piece.kind) {
    case 'trial': {
      const behaviours = behavioursOf(model, space, piece.function, piece.with, absent);
      return { ...of(behaviours[piece.outcome]), trial: { outcome: piece.outcome, mixed: behaviours['comes-and-goes'] } };
    }
    case 'claim':
      return of(told(behavioursOf(model, space, piece.function, [], absent)[piece.says], piece.honesty, SAID_ANYWAY[piece.says]));
    case 'claim-place': {
      const anyway = piece.sees === NOTHING_WRONG ? SEEN_ANYWAY.nothing : SEEN_ANYWAY.something;
      return of(told(findingChances(model, space, piece.block, piece.sees, absent), piece.honesty, anyway));
    }
    case 'finding':
      return of(findingChances(model, space, piece.block, piece.sees, absent));
    case 'reading': {
      const point = pointOf(model, piece.point);
      const chance = sameBandChances(model, space, point, piece.value);
      return { id: piece.id, key, likelihood: readingLikelihood(model, space, point, piece.value), chance };
    }
  }
}

/** A claim tells the truth with the seller's honesty, and else what such sellers say anyway. */
const told = (truth: Float64Array, honesty: number, anyway: number): Float64Array => truth.map((p) => honesty * p + (1 - honesty) * anyway);

function keyOf(piece: Observation): string {
  switch (piece.kind) {
    case 'trial':
      return `try ${piece.function} ${[...piece.with].sort().join(' ')}`;
    case 'finding':
      return `look ${piece.block} ${piece.sees}`;
    case 'reading':
      return `measure ${piece.point}`;
    case 'claim':
      return `claim ${piece.function}`;
    case 'claim-place':
      return `claim-place ${piece.block} ${piece.sees}`;
  }
}

/** Each repetition adds so much of one observation: the unit, the person and the meter are the same. */
const REPEAT_WEIGHT = 0.2;

/**
 * The likelihood of repetitions of one observation (at least one), together as good as 1 + 0.2·(k − 1) of them. Trials that
 * differ are one observation of coming and going; other contradictions share the weight evenly.
 */
export function likelihoodOfRepeats(group: readonly Weighed[]): Float64Array {
  const together = 1 + REPEAT_WEIGHT * (group.length - 1);
  const one = group[0]!;
  if (group.length === 1) return one.likelihood;
  const differs = one.trial && group.some((other) => other.trial?.outcome !== one.trial!.outcome);
  if (differs) return one.trial!.mixed.map((p) => p ** together);
  const product = new Float64Array(one.likelihood.length).fill(1);
  for (const { likelihood } of group) for (let s = 0; s < product.length; s++) product[s]! *= likelihood[s]! ** (together / group.length);
  return product;
}
