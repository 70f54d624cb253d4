import type { OutlookView, ScoutQuestion } from '../views/index.ts';
import type { Desk } from './desk.ts';
import { asksOf } from './outlook.ts';

/** What claims of a seller are worth, whatever they are of. */
export const honestyOf = ({ honesty }: Desk, seller: string): OutlookView['honesty'] => ({
  chance: honesty.chance(seller, null),
  claims_checked: honesty.claimsChecked(seller),
});

/** What can be said of a kept listing whose model is not here any more: nothing of its worth, so leave it. */
export function blankOutlook(desk: Desk, question: ScoutQuestion, why: string): OutlookView {
  const { currency } = desk.state.settings;
  return {
    currency,
    hypotheses: [{ faults: [], unknown: true, chance: 1, alike: [] }],
    works_as_is: 0,
    mendable: 0,
    value_minor: 0,
    low_minor: 0,
    high_minor: 0,
    ceiling_minor: 0,
    asks_minor: asksOf(desk, question),
    loss_chance: 1,
    minutes: 0,
    verdict: 'leave',
    honesty: honestyOf(desk, question.seller),
    why: [`Nothing can be reckoned: ${why}.`],
  };
}
