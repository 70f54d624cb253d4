import type { EventOf } from '../events/index.ts';
import { inModel, modelKnown } from './known.ts';
import { moneySound } from './money.ts';
import { nearest } from './nearest.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

export const listingWeighed: Rule<'listing-weighed'> = (context, { body }) =>
  firstOf(
    () => listingOpen(context, body.listing_id, false),
    () => modelKnown(context, body.model_id, 'body.model_id'),
    () => moneySound(context, body, body.price_minor + body.postage_minor),
    ...body.claims.map((claim, index) => () => {
      const field = `body.claims.${index}.function`;
      return claim.about === 'function' ? inModel(context, body.model_id, 'functions', claim.function, field) : null;
    }),
  );

export const listingDropped: Rule<'listing-dropped'> = (context, { body }) => listingOpen(context, body.listing_id, true);

export const lotBought: Rule<'lot-bought'> = (context, { body }) =>
  firstOf(
    () => lotNameFree(context, body.lot_id),
    () => (body.listing_id === undefined ? null : listingOpen(context, body.listing_id, true)),
    ...body.items.map((item, index) => () => lotItemSound(context, body, item, index)),
    () => moneySound(context, body, body.price_minor + body.postage_minor + body.tax_minor),
  );

function listingOpen({ state }: RuleContext, id: string, mustExist: boolean): Objection | null {
  const listing = state.listings.get(id);
  if (!listing && mustExist) {
    return refuse('unknown-listing', 'body.listing_id', `there is no listing "${id}"; there are ${nearest(id, state.listings.keys())}`);
  }
  if (listing?.fate !== 'bought') return null;
  return refuse('listing-closed', 'body.listing_id', `the listing "${id}" was bought already`);
}

function lotNameFree({ state }: RuleContext, id: string): Objection | null {
  if (!state.lots.has(id) && !state.putAway.has(id)) return null;
  return refuse('id-taken', 'body.lot_id', `another lot is called "${id}" already; give this one a name of its own`);
}

type LotBody = EventOf<'lot-bought'>['body'];

function lotItemSound(context: RuleContext, body: LotBody, item: LotBody['items'][number], index: number): Objection | null {
  const at = `body.items.${index}`;
  const taken = context.state.items.has(item.item_id) || context.state.putAway.has(item.item_id);
  if (taken || body.items.findIndex((other) => other.item_id === item.item_id) < index) {
    return refuse('id-taken', `${at}.item_id`, `another item is called "${item.item_id}" already; give this one a name of its own`);
  }
  const unknown = modelKnown(context, item.model_id, `${at}.model_id`);
  if (unknown || item.kind === 'unit') return unknown;
  if (item.slot !== undefined) return inModel(context, item.model_id, 'slots', item.slot, `${at}.slot`);
  const slots = context.models.get(item.model_id)!.file.slots.map((slot) => slot.id);
  return refuse('slot-missing', `${at}.slot`, `an assembly is made for a slot: name one of ${nearest('', slots)}`);
}
