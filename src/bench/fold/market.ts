import { toBench } from '../books/to-bench.ts';
import type { Apply } from './fold.ts';
import { missing } from './fold.ts';

/** A sale seen elsewhere; the same id again replaces what was written down before. */
export const saleSeen: Apply<'sale-seen'> = ({ state }, { id, device, body }) => {
  const priceMinor = toBench(body.price_minor, body, state.settings.currency);
  if (priceMinor === null) return missing('price that can be reckoned for sale', body.sale_id);
  state.sightings.set(body.sale_id, {
    id: body.sale_id,
    modelId: body.model_id,
    day: body.day,
    priceMinor,
    condition: body.condition,
    complete: body.complete ?? null,
    original: body.original ?? null,
    text: body.text,
    eventId: id,
    demo: device === 'demo',
  });
  return null;
};

export const feesSet: Apply<'fees-set'> = ({ state }, { body }) => {
  state.fees.push({
    place: body.place,
    fromDay: body.from_day,
    bands: body.bands.map(({ up_to_minor: upToMinor, percent }) => ({ upToMinor, percent })),
    fixedMinor: body.fixed_minor,
    capMinor: body.cap_minor,
  });
  return null;
};

export const postageSet: Apply<'postage-set'> = ({ state }, { body }) => {
  state.postage.push({
    fromDay: body.from_day,
    bands: body.bands.map(({ up_to_g: upToG, price_minor: priceMinor }) => ({ upToG, priceMinor })),
  });
  return null;
};

export const taxRuleSet: Apply<'tax-rule-set'> = ({ state }, { body }) => {
  state.taxRules.push(body);
  return null;
};

export const saleTextSet: Apply<'sale-text-set'> = ({ state }, { body }) => {
  state.saleText = body.template;
  return null;
};
