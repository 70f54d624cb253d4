import type { TaxRule } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

export interface TaxAnswer {
  readonly rule: TaxRule;
  readonly fromDay: string;
  readonly on: boolean;
  readonly ratePercent: number;
  readonly itemLimitMinor: number | null;
  readonly allowanceMinor: number | null;
}

/** A rule of tax is used from a day on, or not any more. */
export const setTaxRule = ({ rule, fromDay, on, ratePercent, itemLimitMinor, allowanceMinor }: TaxAnswer): Gesture => ({
  said: on ? 'a rule of tax is in use' : 'a rule of tax is out of use',
  drafts: [
    {
      kind: 'tax-rule-set',
      body: {
        rule,
        from_day: fromDay,
        on,
        rate_percent: ratePercent,
        item_limit_minor: itemLimitMinor,
        allowance_minor: allowanceMinor,
      },
    },
  ],
});
