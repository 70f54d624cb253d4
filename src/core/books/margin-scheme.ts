import { roundHalfEven } from '../quantity/index.ts';
import { BooksError } from './books-error.ts';

/**
 * Tax inside a margin, minor units: max(0, sale − purchase) · rate / (100 + rate), half even. The margin holds its tax already; a loss gives 0 and is
 * not set against another thing. The purchase is what was paid for the thing alone: parts and work are no part of it.
 * Margin scheme for second-hand goods, thing by thing: Council Directive 2006/112/EC, article 315; HMRC Notice 718.
 */
export function marginTax(purchaseMinor: number, saleMinor: number, ratePercent: number): number {
  checkRate(ratePercent);
  return taxInside(Math.max(0, saleMinor - purchaseMinor), ratePercent);
}

const taxInside = (amountMinor: number, ratePercent: number): number => roundHalfEven((amountMinor * ratePercent) / (100 + ratePercent));

function checkRate(ratePercent: number): void {
  if (!(ratePercent >= 0 && ratePercent <= 100))
    throw new BooksError('bad-rate', `a tax rate is from 0 to 100 per cent, got ${ratePercent}`);
}

export interface GlobalPeriod {
  readonly salesMinor: number;
  readonly purchasesMinor: number;
}

export interface GlobalMargin {
  /** Sales less purchases and what was brought forward; below zero it is carried forward. */
  readonly marginMinor: number;
  readonly taxMinor: number;
  readonly carriedForwardMinor: number;
}

/**
 * All sales of each period against all purchases of it, period by period; more bought than sold is carried into the next. Global accounting:
 * VAT (Special Provisions) Order 1995, article 13(3) to (6). Things dearer than the limit of the rule are left out by the caller and go one by one.
 */
export function globalMargins(periods: readonly GlobalPeriod[], ratePercent: number): GlobalMargin[] {
  checkRate(ratePercent);
  let broughtForward = 0;
  return periods.map(({ salesMinor, purchasesMinor }) => {
    const marginMinor = salesMinor - purchasesMinor - broughtForward;
    broughtForward = Math.max(0, -marginMinor);
    return { marginMinor, taxMinor: taxInside(Math.max(0, marginMinor), ratePercent), carriedForwardMinor: broughtForward };
  });
}
