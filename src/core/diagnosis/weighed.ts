import { behavioursOf, type Behaviours } from './behaviour.ts';
import { findingChances, NOTHING_WRONG } from './looking.ts';
import { pointOf, readingLikelihood, sameBandChances } from './metering.ts';
import type { Behaviour, DeviceModel } from './model.ts';
import { keyOf, type Observation } from './observation.ts';
import { likelihoodOfTrials } from './likelihood-of-trials.ts';
import type { StateSpace } from './state-space.ts';

/** One observation, weighed in every state. */
export interface Weighed {
  readonly id: string;
  /** Observations of the same key are of the same thing. */
  readonly key: string;
  readonly likelihood: Float64Array;
  /** Chance of just that, by state; for a reading, of its band. */
  readonly chance: Float64Array;
  /** Of trials: what was noted, and what might have been. */
  readonly trial?: { readonly outcome: Behaviour; readonly behaviours: Behaviours };
}

/** What a seller says who does not say the truth; common practice, no source: junk is sold as failing. */
const SAID_ANYWAY: Readonly<Record<Behaviour, number>> = { works: 0.35, 'comes-and-goes': 0.15, fails: 0.5 };
const SEEN_ANYWAY = { nothing: 0.3, something: 0.1 };

/** A unit that is well fails a test at length so seldom; common practice, no source. */
const WELL_FAILS = 0.001;

/** The likelihood of an observation in each state. Throws DiagnosisError on a function or point that the model lacks. */
export function weigh(model: DeviceModel, space: StateSpace, piece: Observation, absent: ReadonlySet<string>): Weighed {
  const key = keyOf(piece);
  const of = (likelihood: Float64Array): Weighed => ({ id: piece.id, key, likelihood, chance: likelihood });
  switch (piece.kind) {
    case 'trial': {
      const behaviours = behavioursOf(model, space, piece.function, piece.with, absent);
      return { ...of(behaviours[piece.outcome]), trial: { outcome: piece.outcome, behaviours } };
    }
    case 'claim':
      return of(told(behavioursOf(model, space, piece.function, [], absent)[piece.says], piece.honesty, SAID_ANYWAY[piece.says]));
    case 'claim-place': {
      const anyway = piece.sees === NOTHING_WRONG ? SEEN_ANYWAY.nothing : SEEN_ANYWAY.something;
      return of(told(findingChances(model, space, piece.block, piece.sees, absent), piece.honesty, anyway));
    }
    case 'finding':
      return of(findingChances(model, space, piece.block, piece.sees, absent, piece.part));
    case 'not-well': {
      const likelihood = new Float64Array(space.size).fill(1);
      // Its chance counts as certain: of the two things that a failed test says, only the trial may be odd.
      const chance = likelihood.slice();
      likelihood[space.none] = WELL_FAILS;
      return { id: piece.id, key, likelihood, chance };
    }
    case 'reading': {
      const point = pointOf(model, piece.point);
      const chance = sameBandChances(model, space, point, piece.value);
      return { id: piece.id, key, likelihood: readingLikelihood(model, space, point, piece.value), chance };
    }
  }
}

/** A claim tells the truth with the seller's honesty, and else what such sellers say anyway. */
const told = (truth: Float64Array, honesty: number, anyway: number): Float64Array => truth.map((p) => honesty * p + (1 - honesty) * anyway);

/** The likelihood of observations of one key (at least one) together. */
export function likelihoodOfGroup(group: readonly Weighed[]): Float64Array {
  const [one] = group;
  if (!one!.trial || group.length === 1) return one!.likelihood;
  return likelihoodOfTrials(
    one!.trial.behaviours,
    group.map(({ trial }) => trial!.outcome),
  );
}
