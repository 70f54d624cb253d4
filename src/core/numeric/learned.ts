import { betaQuantile, studentQuantile } from './quantile-of.ts';
import { gammaQuantile } from './incomplete-gamma.ts';

/** A number learned from jobs, with the limits between which it lies with nine chances in ten. */
export interface Learned {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

const [LOW, HIGH] = [0.05, 0.95];

/**
 * A chance from what came and what did not (counts may be fractions: faded jobs), on a belief of mean `before` that weighs `weight` jobs. Beta distribution:
 * Bayes (1763); conjugate to the binomial.
 */
export function learnedChance(before: number, weight: number, came: number, failed: number): Learned {
  const [a, b] = [Math.max(before, 1e-6) * weight + came, Math.max(1 - before, 1e-6) * weight + failed];
  return { mean: a / (a + b), low: betaQuantile(LOW, a, b), high: betaQuantile(HIGH, a, b) };
}

/** A rate per thing from how often it came over so many things, on a belief of mean `before` > 0 that weighs `weight` things. Gamma distribution, conjugate to Poisson's. */
export function learnedRate(before: number, weight: number, came: number, things: number): Learned {
  const [shape, rate] = [before * weight + came, weight + things];
  return { mean: shape / rate, low: gammaQuantile(LOW, shape, rate), high: gammaQuantile(HIGH, shape, rate) };
}

/**
 * A time from times taken (weights may be fractions), on a belief of middle `before` > 0 that weighs `weight` jobs with spread `spread` of the logarithm. Log-normal
 * with unknown middle and spread: normal and inverse gamma beliefs, so that limits are Student's t (Gelman et al., Bayesian Data Analysis, 3.3; from memory).
 * `mean` is the middle time.
 */
export function learnedTime(
  before: number,
  weight: number,
  spread: number,
  times: readonly { readonly value: number; readonly weight: number }[],
): Learned {
  const counted = times.filter(({ value }) => value > 0);
  const count = counted.reduce((sum, time) => sum + time.weight, 0);
  const own = counted.reduce((sum, time) => sum + time.weight * Math.log(time.value), 0) / Math.max(count, 1e-300);
  const total = weight + count;
  const middle = (weight * Math.log(before) + count * own) / total;
  const squares =
    weight * spread ** 2 +
    counted.reduce((sum, time) => sum + time.weight * (Math.log(time.value) - own) ** 2, 0) +
    ((weight * count) / total) * (own - Math.log(before)) ** 2;
  const reach = studentQuantile(HIGH, total) * Math.sqrt(squares / total / total);
  return { mean: Math.exp(middle), low: Math.exp(middle - reach), high: Math.exp(middle + reach) };
}
