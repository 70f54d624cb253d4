import { useLocation } from 'wouter';
import type { WatchView } from '../../../bench/views/index.ts';
import { dropListing } from '../actions/drop-listing.ts';
import type { ListingAnswer } from '../actions/keep-listing.ts';
import { money } from '../format/money.ts';
import { chance } from '../format/number.ts';
import { day, dayAndTime } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { ReasonForm } from '../ui/reason-form.tsx';
import { Why } from '../ui/why.tsx';
import { BuyForm } from './buy-form.tsx';
import { ListingPictures } from './listing-pictures.tsx';

type Listing = WatchView['listings'][number];
const VERDICTS = { buy: 'buy', haggle: 'haggle', leave: 'leave' } as const;

/** One kept listing: its outlook now, and what can be done with it. */
export function WatchLine({ listing }: { readonly listing: Listing }) {
  const { outlook } = listing;
  const [, go] = useLocation();
  return (
    <li className="watch-line">
      <div className="row-apart">
        <h3>{listing.title}</h3>
        <span className={`verdict verdict-${outlook.verdict}`}>{listing.fate === 'open' ? VERDICTS[outlook.verdict] : listing.fate}</span>
      </div>
      <p className="small muted">
        from {listing.seller} · {listing.closes_at !== null && `closes ${dayAndTime(listing.closes_at)} · `}weighed{' '}
        {day(listing.weighed_at)} · asked {money(outlook.asks_minor, outlook.currency)} · worth up to{' '}
        {money(Math.max(0, outlook.ceiling_minor), outlook.currency)} · chance to lose {chance(outlook.loss_chance)}
        {listing.reason !== '' && ` · ${listing.reason}`}
      </p>
      <Why lines={outlook.why} />
      <ListingPictures hashes={listing.photos} />
      {listing.told.length > 0 && (
        <Fold title={toldTitle(listing.told)}>
          <ul className="plain-list">
            {listing.told.map((claim) => (
              <li key={`${claim.item_id} ${claim.said}`}>
                #{claim.number}, {claim.said}: {claim.right === null ? 'not settled yet' : claim.right ? 'was right' : 'was wrong'}
              </li>
            ))}
          </ul>
        </Fold>
      )}
      {listing.fate === 'open' && (
        <>
          <Fold title="I bought it">
            <BuyForm
              listing={listingAnswer(listing, outlook.currency)}
              isWeighed
              kinds={[{ modelId: listing.model_id, count: listing.question.count, name: listing.title }]}
              valueMinor={outlook.value_minor}
              bought={() => go('/pile')}
            />
          </Fold>
          <Fold title="Drop it">
            <DropForm id={listing.id} />
          </Fold>
        </>
      )}
    </li>
  );
}

function toldTitle(told: Listing['told']): string {
  const settled = told.filter(({ right }) => right !== null);
  if (settled.length === 0) return 'What was true of its claims: none is settled yet';
  return `What was true of its claims: ${settled.filter(({ right }) => right).length} of ${settled.length} settled`;
}

function listingAnswer({ id, title, seller, question, photos }: Listing, benchCurrency: string): ListingAnswer {
  return {
    listingId: id,
    title,
    text: '',
    seller,
    modelId: question.model_id,
    count: question.count,
    priceMinor: question.price_minor,
    postageMinor: question.postage_minor,
    taxMinor: question.tax_minor,
    closesAt: null,
    currency: question.currency ?? benchCurrency,
    rate: question.rate,
    claims: question.claims,
    photos,
  };
}

function DropForm({ id }: { readonly id: string }) {
  const { record, busy } = useRecorder();
  return <ReasonForm label="Why not" action="Drop it" required busy={busy} done={(reason) => void record(dropListing(id, reason))} />;
}
