import { MarketError } from './market-error.ts';
import type { Waiting } from './kaplan-meier.ts';

/** An offer with what was asked, as a share of what it was thought to be worth. */
export interface Offer extends Waiting {
  readonly askShare: number;
}

/** How soon buyers come: sales a day at the ask share 1, and by how much that falls when more is asked. */
export interface Demand {
  /** Sales a day when just the fair price is asked. */
  readonly perDay: number;
  /** Elasticity: the rate goes with askShare^−elasticity. */
  readonly elasticity: number;
  /** Sales that the knowledge of the rate weighs: shape of its gamma belief. */
  readonly weight: number;
}

/** What is thought of demand before anything was sold: a month at the fair price, and at 10 % more a third fewer buyers. Common practice, no source. */
export const DEMAND_BEFORE: Demand = { perDay: 1 / 30, elasticity: 4, weight: 3 };
const ELASTICITY_SPREAD = 1.5;
const ROUNDS = 30;

export const saleRate = ({ perDay, elasticity }: Demand, askShare: number): number => perDay * askShare ** -elasticity;

/**
 * Demand from offers that were sold or not: sales as a Poisson process with the rate perDay · askShare^−elasticity, a gamma belief in perDay and
 * a normal one in the elasticity, by Newton's method on the elasticity with perDay at its best for each. An elasticity below 0 is not believed.
 */
export function learnDemand(offers: readonly Offer[], before: Demand = DEMAND_BEFORE): Demand {
  const wrong = offers.find(({ askShare, days }) => !(askShare > 0) || !(days >= 0));
  if (wrong)
    throw new MarketError('bad-time', `an offer asks a share above 0 for at least 0 days, got ${wrong.askShare} for ${wrong.days}`);
  const sold = offers.filter((offer) => offer.sold);
  const weight = before.weight + sold.length;
  const logs = offers.map(({ askShare }) => Math.log(askShare));
  const soldLogs = sold.reduce((sum, { askShare }) => sum + Math.log(askShare), 0);
  let elasticity = before.elasticity;
  const start = before.weight / before.perDay;
  for (let round = 0; round < ROUNDS; round++) {
    let [exposure, first, second] = [start, 0, 0];
    offers.forEach(({ days }, i) => {
      const part = days * Math.exp(-elasticity * logs[i]!);
      exposure += part;
      first += part * logs[i]!;
      second += part * logs[i]! ** 2;
    });
    const rise = -soldLogs + (weight * first) / exposure - (elasticity - before.elasticity) / ELASTICITY_SPREAD ** 2;
    const bend = weight * (second / exposure - (first / exposure) ** 2) + 1 / ELASTICITY_SPREAD ** 2;
    elasticity = Math.max(0, elasticity + Math.max(-2, Math.min(2, rise / bend)));
  }
  const exposure = offers.reduce((sum, { days }, i) => sum + days * Math.exp(-elasticity * logs[i]!), start);
  return { perDay: weight / exposure, elasticity, weight };
}
