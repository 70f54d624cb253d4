import { toBench } from '../books/to-bench.ts';
import type { Apply } from './fold.ts';
import { missing, onItem } from './fold.ts';

/** Only what the event names is set. */
export const planSet: Apply<'plan-set'> = ({ state }, { body }) => {
  const said = Object.fromEntries(Object.entries(body).filter(([, value]) => value !== undefined));
  state.planning.wishes = { ...state.planning.wishes, ...said };
  return null;
};

/** A later choice of the same thing replaces the earlier one. */
export const planChosen: Apply<'plan-chosen'> = (fold, event) =>
  onItem(fold, event, ({ id: item }) => {
    const { does, slot = '', remedy = null, regret_minor: regretMinor = null, reason } = event.body;
    const { choices } = fold.state.planning;
    if (does === 'as-planned') return void choices.delete(item);
    const own = (choices.get(item) ?? []).filter((choice) => (does === undefined ? choice.slot !== slot : choice.does === null));
    const choice = { eventId: event.id, does: does ?? null, slot: does === undefined ? slot : '', remedy, regretMinor, reason };
    choices.set(item, [...own, choice]);
  });

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
