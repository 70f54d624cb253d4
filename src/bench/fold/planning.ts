import { toBench } from '../books/to-bench.ts';
import type { Apply } from './fold.ts';
import { missing } from './fold.ts';

/** Only what the event names is set. */
export const planSet: Apply<'plan-set'> = ({ state }, { body }) => {
  const said = Object.fromEntries(Object.entries(body).filter(([, value]) => value !== undefined));
  state.planning.wishes = { ...state.planning.wishes, ...said };
  return null;
};

/** A later choice of the same thing replaces the earlier one. */
export const planChosen: Apply<'plan-chosen'> = ({ state }, { id, at, body }) => {
  const { item_id: item, does, slot = '', remedy = null, regret_minor: regretMinor = null, reason } = body;
  if (!state.items.has(item)) return missing('item', item);
  const { choices } = state.planning;
  if (does === 'as-planned') {
    choices.delete(item);
    return null;
  }
  const own = (choices.get(item) ?? []).filter((choice) => (does === undefined ? choice.slot !== slot : choice.does === null));
  choices.set(item, [...own, { eventId: id, at, does: does ?? null, slot: does === undefined ? slot : '', remedy, regretMinor, reason }]);
  return null;
};

/** A supplier with what it sells, replaced as a whole; without offers it is forgotten. */
export const supplierSet: Apply<'supplier-set'> = ({ state }, { body }) => {
  const own = (minor: number): number | null => toBench(minor, body, state.settings.currency);
  const postageMinor = own(body.postage_minor);
  const offers = body.offers.map(({ part, unit_minor: unit, least }) => ({ part, unitMinor: own(unit), least }));
  const sound = offers.filter((offer): offer is { part: string; unitMinor: number; least: number } => offer.unitMinor !== null);
  if (postageMinor === null || sound.length < offers.length) return missing('prices that can be reckoned for supplier', body.supplier);
  if (offers.length === 0) state.planning.suppliers.delete(body.supplier);
  else state.planning.suppliers.set(body.supplier, { name: body.supplier, postageMinor, days: body.days, offers: sound });
  return null;
};
