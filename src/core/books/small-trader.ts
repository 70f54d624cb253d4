/** What of a year's trade would count as income by two ways of reckoning; minor units. */
export interface SmallTrader {
  /** Whether all that came in is within the allowance, so that nothing counts. */
  readonly within: boolean;
  /** With the allowance instead of costs: what came in less the allowance, at least 0. */
  readonly withAllowanceMinor: number;
  /** With the costs: what came in less what it cost; below zero it is a loss. */
  readonly withCostsMinor: number;
  readonly lower: 'allowance' | 'costs';
  /** How much more may come in before the allowance is used up; 0 beyond. */
  readonly leftMinor: number;
}

/**
 * A year's income against an allowance that the person states. The allowance is measured on what comes in, not on profit. Whether such an
 * allowance exists, how high it is and who may use it is for the tax office or an accountant to say.
 */
export function smallTrader(incomeMinor: number, costsMinor: number, allowanceMinor: number): SmallTrader {
  const withAllowanceMinor = Math.max(0, incomeMinor - allowanceMinor);
  const withCostsMinor = incomeMinor - costsMinor;
  return {
    within: incomeMinor <= allowanceMinor,
    withAllowanceMinor,
    withCostsMinor,
    lower: withAllowanceMinor <= withCostsMinor ? 'allowance' : 'costs',
    leftMinor: Math.max(0, allowanceMinor - incomeMinor),
  };
}
