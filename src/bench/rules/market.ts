import { PLACES } from '../selling/index.ts';
import { modelKnown } from './known.ts';
import { moneySound } from './money.ts';
import { firstOf, refuse, type Rule } from './rule.ts';

export const saleSeen: Rule<'sale-seen'> = (context, { body }) =>
  firstOf(
    () => modelKnown(context, body.model_id, 'body.model_id'),
    () => moneySound(context, body, body.price_minor),
  );

/** Each band ends above the one before, and only the last has no end. */
export const feesSet: Rule<'fees-set'> = (_context, { body }) => {
  const ends = body.bands.map(({ up_to_minor: end }) => end ?? Infinity);
  const bad = ends.findIndex((end, i) => end <= (ends[i - 1] ?? 0));
  if (bad >= 0)
    return refuse('bands-out-of-order', `body.bands.${bad}.up_to_minor`, 'each band ends at a higher price than the one before');
  if (ends.at(-1) === Infinity) return null;
  return refuse('bands-out-of-order', `body.bands.${ends.length - 1}.up_to_minor`, 'the last band has no end: leave it out there');
};

/** Each band takes heavier parcels than the one before. */
export const postageSet: Rule<'postage-set'> = (_context, { body }) => {
  const bad = body.bands.findIndex(({ up_to_g: end }, i) => end <= (body.bands[i - 1]?.up_to_g ?? 0));
  if (bad < 0) return null;
  return refuse('bands-out-of-order', `body.bands.${bad}.up_to_g`, 'each band takes heavier parcels than the one before');
};

/** A rule that is switched on comes with its figures: they are the person's, none is built in. */
export const taxRuleSet: Rule<'tax-rule-set'> = (_context, { body }) => {
  if (!body.on) return null;
  if (body.rule !== 'small-trader' && body.rate_percent === 0)
    return refuse('figure-missing', 'body.rate_percent', 'a margin scheme needs its rate in per cent');
  if (body.rule === 'small-trader' && body.allowance_minor === null)
    return refuse('figure-missing', 'body.allowance_minor', 'an allowance needs its amount');
  return null;
};

/** Each place of the template stands for a fact. */
export const saleTextSet: Rule<'sale-text-set'> = (_context, { body }) => {
  const odd = [...body.template.matchAll(/\{(\w*)\}/g)]
    .map((match) => match[1]!)
    .find((name) => !(PLACES as readonly string[]).includes(name));
  if (odd === undefined) return null;
  return refuse('unknown-fact', 'body.template', `{${odd}} stands for nothing; there are ${PLACES.map((name) => `{${name}}`).join(', ')}`);
};
