import { beliefOf, type Belief } from './belief.ts';
import type { DeviceModel, Evidence } from './model.ts';
import { oddEvidence } from './odd-evidence.ts';
import { multiply, normalise } from './posterior-over-sets.ts';
import { priorWeights } from './prior.ts';
import { stateSpace } from './state-space.ts';
import { stretchesOf } from './stretches.ts';
import { timesOf } from './times.ts';

/**
 * The belief in each set of at most two faults, and in "not in the model", after all evidence, oldest first: an exact Bayes
 * filter. What was said, tried, seen and measured multiplies the states at its time by its likelihood; a remedy moves weight
 * by its chance to mend each fault, and then weighs what was seen after it; a transplant replaces the faults of its blocks by
 * the incoming chances, cut off at two faults in all and renormalised; after an incoming null those blocks are absent, so
 * that functions which need them fail surely until others come in. What repeats an observation counts as `standing` and
 * `likelihoodOfTrials` say. About 3 in 100 pieces of evidence are taken to be slips.
 * `without` leaves one piece out. Throws DiagnosisError on evidence that names what the model lacks.
 */
export function believe(model: DeviceModel, evidence: readonly Evidence[], options: { readonly without?: string } = {}): Belief {
  const space = stateSpace(model);
  const counted = evidence.filter(({ id }) => id !== options.without);
  const times = timesOf(counted);
  const stretches = stretchesOf(model, space, times);
  const starts: Float64Array[] = [];
  let weights = priorWeights(model, space);
  for (const { together, change } of stretches) {
    starts.push(weights.slice());
    multiply(weights, together);
    if (!change) continue;
    weights = change.transition.forward(weights);
    normalise(weights);
  }
  return beliefOf(model, space, weights, times.at(-1)!.absent, oddEvidence(space, stretches, starts));
}
