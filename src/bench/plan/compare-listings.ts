import { winnersBias } from '../../core/planning/index.ts';
import type { Desk } from '../advice/desk.ts';
import { asksOf, unknownModel } from '../advice/outlook.ts';
import { claimSaid, percent, whole } from '../advice/say.ts';
import type { Refusal } from '../bench.ts';
import type { PlanWorker } from '../ports.ts';
import { claimsThatCount, readListing } from '../scout/index.ts';
import type { ComparedListing, CompareView, ListingToCompare, LotQuestion } from '../views/index.ts';
import type { LotWorth } from './jobs.ts';
import { lotItems, withLot, type PlanInHand } from './lot-worth.ts';
import { planWishes } from './plan-wishes.ts';

/**
 * Listings side by side by what each alone would add to the pile as it is planned, most profit per hour at the asked price first; those that
 * make no work come by profit at the end. What is wrong with their units is not drawn, so a single lot weighed by itself comes out a little higher.
 */
export async function compareListings(
  desk: Desk,
  worker: PlanWorker,
  inHand: PlanInHand,
  listings: readonly ListingToCompare[],
): Promise<CompareView | Refusal> {
  const missing = listings.find(({ model_id: id }) => !desk.models.has(id));
  if (missing)
    return {
      ...unknownModel(desk, missing.model_id),
      index: listings.indexOf(missing),
      field: `listings.${listings.indexOf(missing)}.model_id`,
    };
  const questions = listings.map((listing) => questionOf(desk, listing));
  const lots = questions.map((question, i) => lotItems(desk, question, `listing ${i + 1}`));
  const worths = await worker.run({ kind: 'compare', pile: withLot(desk, inHand.from, lots.flat()), plan: inHand.plan, lots });
  const rows = listings.map((listing, i) => rowOf(desk, listing, i, questions[i]!, worths[i]!));
  const wishes = planWishes(desk.state);
  return {
    currency: desk.state.settings.currency,
    listings: rows.toSorted((a, b) => (b.per_hour_minor ?? -Infinity) - (a.per_hour_minor ?? -Infinity) || b.profit_minor - a.profit_minor),
    why: [
      'Each is weighed alone against the plan of your pile; two of them together are not worth the sum.',
      `Profit an hour counts the worth of your hour as earned. ${percent(winnersBias(wishes.errorShare, wishes.bidders))} of the worth is taken off, as who bids most of ${wishes.bidders} has likely judged too high.`,
    ],
  };
}

/** A listing as a lot: its words read into claims, on each unit where they tell units apart. */
function questionOf(desk: Desk, { model_id: id, text, count, ...asked }: ListingToCompare): LotQuestion {
  const model = desk.models.get(id)!;
  const reading = readListing(text, model.file, [...desk.state.taughtWords.values()]);
  const units = Math.max(count, reading.units);
  if (reading.units > 1)
    return {
      ...asked,
      units: Array.from({ length: units }, (_, i) => ({ model_id: id, count: 1, claims: claimsThatCount(reading, i + 1) })),
    };
  return { ...asked, units: [{ model_id: id, count: units, claims: claimsThatCount(reading, null) }] };
}

function rowOf(
  desk: Desk,
  listing: ListingToCompare,
  index: number,
  question: LotQuestion,
  { worthMinor, minutes }: LotWorth,
): ComparedListing {
  const { settings } = desk.state;
  const wishes = planWishes(desk.state);
  const asksMinor = asksOf(desk, listing);
  const profit = worthMinor - winnersBias(wishes.errorShare * Math.max(0, worthMinor), wishes.bidders) - asksMinor;
  const hours = Math.max(0, minutes / 60);
  const model = desk.models.get(listing.model_id)!;
  return {
    index,
    title: listing.title,
    seller: listing.seller,
    model_id: listing.model_id,
    count: question.units.reduce((sum, unit) => sum + unit.count, 0),
    closes_at: listing.closes_at,
    asks_minor: asksMinor,
    worth_minor: whole(worthMinor),
    profit_minor: whole(profit),
    minutes: Math.round(minutes),
    per_hour_minor: hours > 0 ? whole(profit / hours + settings.hourValueMinor) : null,
    claims: [...new Set(question.units.flatMap(({ claims }) => claims.map((claim) => claimSaid(model, claim))))],
    honesty: desk.honesty.chance(listing.seller, null),
  };
}
