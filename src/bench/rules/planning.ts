import { REST } from '../plan/plan-slots.ts';
import { inModelOf, itemAtHand } from './known.ts';
import { moneySound } from './money.ts';
import { firstOf, refuse, type Rule } from './rule.ts';

/** A choice says what is done with a unit, or which remedies one of its slots gets. */
export const planChosen: Rule<'plan-chosen'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () =>
      (body.does === undefined) === (body.slot === undefined || body.remedy === undefined)
        ? refuse('figure-missing', 'body.does', 'a choice names either what is done with the item, or a slot with its remedy')
        : null,
    () => (body.slot === undefined || body.slot === REST ? null : inModelOf(context, body.item_id, 'slots', body.slot, 'body.slot')),
  );

export const supplierSet: Rule<'supplier-set'> = (context, { body }) =>
  moneySound(
    context,
    body,
    body.offers.reduce((most, { unit_minor: unit }) => Math.max(most, unit), body.postage_minor),
  );
