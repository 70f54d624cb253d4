/** Likelihood of one piece of knowledge for one hypothesis, by its set of members; not negative. */
export type Factor<Member> = (set: readonly Member[]) => number;

export class DiagnosisError extends Error {
  constructor(
    readonly code: 'impossible-evidence' | 'unknown-name' | 'unsound-belief' | 'shape',
    message: string,
  ) {
    super(message);
    this.name = 'DiagnosisError';
  }
}

/**
 * The exact posterior over hypotheses that are sets: each weighs the product of the factors, normalised (Bayes). Any discrete network whose
 * variables are true or false is of this form: the sets are its true variables, the factors its conditional tables and its evidence.
 * Throws DiagnosisError when no hypothesis is possible.
 */
export function posteriorOverSets<Member>(sets: readonly (readonly Member[])[], factors: readonly Factor<Member>[]): Float64Array {
  const weights = new Float64Array(sets.length).fill(1);
  for (const factor of factors) multiply(weights, Float64Array.from(sets, factor));
  return weights;
}

/** Multiplies weights by a likelihood and normalises; gives back the chance of what was seen, given the weights before. */
export function multiply(weights: Float64Array, likelihood: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    weights[i]! *= likelihood[i]!;
    sum += weights[i]!;
  }
  normalise(weights, sum);
  return sum;
}

/** Scales weights to a sum of one. */
export function normalise(weights: Float64Array, sum = sumOf(weights)): void {
  if (!(sum > 0)) throw new DiagnosisError('impossible-evidence', 'no hypothesis allows what was seen');
  for (let i = 0; i < weights.length; i++) weights[i]! /= sum;
}

function sumOf(weights: Float64Array): number {
  let sum = 0;
  for (const weight of weights) sum += weight;
  return sum;
}

/** Mean of a value by state under weights that sum to 1. */
export function meanOver(weights: Float64Array, values: Float64Array): number {
  let mean = 0;
  for (let i = 0; i < weights.length; i++) mean += weights[i]! * values[i]!;
  return mean;
}

/** Chance of each member: the sum over the sets that hold it. */
export function marginals<Member>(sets: readonly (readonly Member[])[], weights: Float64Array): Map<Member, number> {
  const chances = new Map<Member, number>();
  sets.forEach((set, i) => {
    for (const member of set) chances.set(member, (chances.get(member) ?? 0) + weights[i]!);
  });
  return chances;
}
