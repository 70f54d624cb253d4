import { MarketError } from './market-error.ts';

/** One offer on the market: sold after so many days, or still there (or taken away) then. */
export interface Waiting {
  readonly days: number;
  readonly sold: boolean;
}

export interface SurvivalStep {
  readonly days: number;
  /** Still on offer just before. */
  readonly atRisk: number;
  readonly sold: number;
  /** Share that is not sold after that day, and its standard error by Greenwood's formula (1926). */
  readonly unsold: number;
  readonly error: number;
}

/**
 * Share still unsold over time, from offers of which some are not sold yet: those count up to the day that they were last seen. Kaplan & Meier (1958),
 * S(t) = Π (1 − d/n) over the days of sales. Throws `MarketError` on a time below zero.
 */
export function kaplanMeier(offers: readonly Waiting[]): SurvivalStep[] {
  const wrong = offers.find(({ days }) => !(days >= 0));
  if (wrong) throw new MarketError('bad-time', `a time on the market is at least 0 days, got ${wrong.days}`);
  const days = [...new Set(offers.filter(({ sold }) => sold).map((offer) => offer.days))].sort((a, b) => a - b);
  let [unsold, greenwood] = [1, 0];
  return days.map((day) => {
    const atRisk = offers.filter((offer) => offer.days >= day).length;
    const sold = offers.filter((offer) => offer.sold && offer.days === day).length;
    unsold *= 1 - sold / atRisk;
    greenwood += sold / (atRisk * (atRisk - sold));
    return { days: day, atRisk, sold, unsold, error: unsold === 0 ? 0 : unsold * Math.sqrt(greenwood) };
  });
}

/** First day on which at most that share is unsold; null when it never falls so far. */
export const daysUntil = (steps: readonly SurvivalStep[], share = 0.5): number | null =>
  steps.find(({ unsold }) => unsold <= share)?.days ?? null;

/** Mantel's log-rank statistic for two groups of offers, χ² with one degree of freedom: above 3.84 they differ at the 5 % level. */
export function logRank(a: readonly Waiting[], b: readonly Waiting[]): number {
  const days = new Set([...a, ...b].filter(({ sold }) => sold).map((offer) => offer.days));
  let [excess, variance] = [0, 0];
  for (const day of days) {
    const [inA, inBoth] = [countFrom(a, day), countFrom(a, day) + countFrom(b, day)];
    const [soldA, soldBoth] = [soldOn(a, day), soldOn(a, day) + soldOn(b, day)];
    excess += soldA - (soldBoth * inA) / inBoth;
    if (inBoth > 1) variance += (soldBoth * (inA / inBoth) * (1 - inA / inBoth) * (inBoth - soldBoth)) / (inBoth - 1);
  }
  return variance > 0 ? excess ** 2 / variance : 0;
}

const countFrom = (offers: readonly Waiting[], day: number): number => offers.filter((offer) => offer.days >= day).length;
const soldOn = (offers: readonly Waiting[], day: number): number => offers.filter((offer) => offer.sold && offer.days === day).length;
