import type { Listing } from '../state.ts';
import type { OutlookView, ScoutQuestion, WatchView } from '../views/index.ts';
import type { Desk } from './desk.ts';
import { outlookOf } from './outlook.ts';
import { blankOutlook } from './blank-outlook.ts';

const ORDER: Readonly<Record<Listing['fate'], number>> = { open: 0, bought: 1, dropped: 2 };

/** Every listing that was weighed, open ones first, the latest first; each with its outlook by what is known now. */
export function watchView(desk: Desk): WatchView {
  const listings = [...desk.state.listings.values()].sort(
    (a, b) => ORDER[a.fate] - ORDER[b.fate] || (a.weighedAt < b.weighedAt ? 1 : a.weighedAt > b.weighedAt ? -1 : 0),
  );
  return {
    listings: listings.map((listing) => {
      const question = questionOf(listing);
      return {
        id: listing.id,
        title: listing.body.title,
        seller: listing.body.seller,
        model_id: listing.body.model_id,
        fate: listing.fate,
        reason: listing.reason,
        weighed_at: listing.weighedAt,
        question,
        outlook: outlookNow(desk, question),
      };
    }),
  };
}

const questionOf = ({ body }: Listing): ScoutQuestion => ({
  model_id: body.model_id,
  seller: body.seller,
  count: body.count,
  price_minor: body.price_minor,
  postage_minor: body.postage_minor,
  currency: body.currency,
  rate: body.rate,
  claims: body.claims,
});

function outlookNow(desk: Desk, question: ScoutQuestion): OutlookView {
  const outlook = outlookOf(desk, question);
  return 'ok' in outlook ? blankOutlook(desk, question, outlook.message) : outlook;
}
