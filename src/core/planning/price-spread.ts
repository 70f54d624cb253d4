import { normalQuantile } from './normal-quantile.ts';
import type { Outcome } from './outcomes.ts';

const POINTS = 11;
const NORMAL = Array.from({ length: POINTS }, (_, i) => normalQuantile((i + 0.5) / POINTS));

/**
 * What a thing of a typical price may really bring: eleven equally likely prices of a log-normal distribution with
 * the given standard deviation of the logarithm, scaled so that they average the typical price exactly.
 */
export function priceSpread(typicalMinor: number, logSpread: number): Outcome[] {
  const factors = NORMAL.map((z) => Math.exp(logSpread * z));
  const scale = POINTS / factors.reduce((a, b) => a + b, 0);
  return factors.map((factor) => ({ valueMinor: typicalMinor * factor * scale, chance: 1 / POINTS }));
}

/** Outcomes of which those above `lineMinor` contain a sale at the typical price: that price spread, the rest as it was. */
export function spreadAbove(outcomes: readonly Outcome[], lineMinor: number, typicalMinor: number, logSpread: number): Outcome[] {
  const prices = priceSpread(typicalMinor, logSpread);
  return outcomes.flatMap((o) =>
    o.valueMinor <= lineMinor
      ? [o]
      : prices.map((price) => ({ valueMinor: o.valueMinor + price.valueMinor - typicalMinor, chance: o.chance * price.chance })),
  );
}
