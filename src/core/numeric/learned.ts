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

/** A normal quantity learned from values: its mean, and the standard deviation of single values around it. */
export interface LearnedNormal {
  readonly mean: Learned;
  readonly spread: Learned;
}

interface Weighed {
  readonly value: number;
  /** May be a fraction: faded. */
  readonly weight: number;
}

/**
 * A normal quantity of unknown mean and spread, on a belief that weighs `weight` values of mean `before.mean` and spread `before.spread` > 0. Normal and inverse
 * gamma beliefs, so that limits of the mean are Student's t and those of the spread a scaled inverse chi (Gelman et al., Bayesian Data Analysis, 3.3; from memory).
 */
export function learnedNormal(
  before: { readonly mean: number; readonly spread: number },
  weight: number,
  values: readonly Weighed[],
): LearnedNormal {
  const count = values.reduce((sum, each) => sum + each.weight, 0);
  const own = values.reduce((sum, each) => sum + each.weight * each.value, 0) / Math.max(count, 1e-300);
  const total = weight + count;
  const mean = (weight * before.mean + count * own) / total;
  const squares =
    weight * before.spread ** 2 +
    values.reduce((sum, each) => sum + each.weight * (each.value - own) ** 2, 0) +
    ((weight * count) / total) * (own - before.mean) ** 2;
  const reach = studentQuantile(HIGH, total) * Math.sqrt(squares / total / total);
  const spreadAt = (chance: number): number => Math.sqrt(squares / gammaQuantile(1 - chance, total / 2, 1 / 2));
  return {
    mean: { mean, low: mean - reach, high: mean + reach },
    spread: { mean: Math.sqrt(squares / total), low: spreadAt(LOW), high: spreadAt(HIGH) },
  };
}

/**
 * A time from times taken, on a belief of middle `before` > 0 that weighs `weight` jobs with spread `spread` of the logarithm: its logarithm is normal. `mean` is the
 * middle time.
 */
export function learnedTime(before: number, weight: number, spread: number, times: readonly Weighed[]): Learned {
  const logs = times.filter(({ value }) => value > 0).map((time) => ({ value: Math.log(time.value), weight: time.weight }));
  const { mean } = learnedNormal({ mean: Math.log(before), spread }, weight, logs);
  return { mean: Math.exp(mean.mean), low: Math.exp(mean.low), high: Math.exp(mean.high) };
}
