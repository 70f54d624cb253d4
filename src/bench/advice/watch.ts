import type { Listing } from '../state.ts';
import type { OutlookView, ScoutQuestion, WatchView } from '../views/index.ts';
import { logWords, type LogWords } from '../log-words.ts';
import type { Desk } from './desk.ts';
import { claimsJudged } from '../learning/honesty.ts';
import { outlookOf } from './outlook.ts';
import { blankOutlook } from './blank-outlook.ts';

const NEVER = Number.MAX_SAFE_INTEGER;
const ORDER: Readonly<Record<Listing['fate'], number>> = { open: 0, bought: 1, dropped: 2 };

/** When an open listing closes, ms; never for the others, and for one that does not say. */
const closing = ({ fate, body }: Listing): number => (fate === 'open' && body.closes_at ? Date.parse(body.closes_at) : NEVER);

/** Every listing that was weighed, open ones first, the one that closes soonest first, then the latest; each with its outlook by what is known now. */
export function watchView(desk: Desk): WatchView {
  const listings = [...desk.state.listings.values()].sort(
    (a, b) =>
      ORDER[a.fate] - ORDER[b.fate] || closing(a) - closing(b) || (a.weighedAt < b.weighedAt ? 1 : a.weighedAt > b.weighedAt ? -1 : 0),
  );
  const words = logWords(desk.state, desk.models);
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
        closes_at: listing.body.closes_at ?? null,
        photos: [...listing.body.photos],
        question,
        outlook: outlookNow(desk, question),
        told: toldOf(desk, listing.id, words),
      };
    }),
  };
}

/** What was true of the claims on the things that were bought by this listing. */
function toldOf({ state }: Desk, listingId: string, words: LogWords): WatchView['listings'][number]['told'] {
  const bought = [...state.lots.values()].filter((lot) => lot.listingId === listingId).flatMap(({ itemIds }) => itemIds);
  return bought.flatMap((id) => {
    const item = state.items.get(id);
    return item
      ? claimsJudged(item).map(({ claim, right }) => ({ item_id: id, number: item.number, said: words.claim(id, claim), right }))
      : [];
  });
}

const questionOf = ({ body }: Listing): ScoutQuestion => ({
  model_id: body.model_id,
  seller: body.seller,
  count: body.count,
  price_minor: body.price_minor,
  postage_minor: body.postage_minor,
  tax_minor: body.tax_minor,
  currency: body.currency,
  rate: body.rate,
  claims: body.claims,
});

function outlookNow(desk: Desk, question: ScoutQuestion): OutlookView {
  const outlook = outlookOf(desk, question);
  return 'ok' in outlook ? blankOutlook(desk, question, outlook.message) : outlook;
}
