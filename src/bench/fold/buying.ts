import { splitByValue } from '../../core/books/index.ts';
import { post } from '../books/post.ts';
import { toBench } from '../books/to-bench.ts';
import type { EventOf } from '../events/index.ts';
import type { BenchState, Item, Lot } from '../state.ts';
import { newItem } from './empty-state.ts';
import type { Apply, Fold } from './fold.ts';
import { missing, onItem, touch } from './fold.ts';

/** Weighing a listing again replaces what was known of it, until it is bought. */
export const listingWeighed: Apply<'listing-weighed'> = ({ state }, event) => {
  const known = state.listings.get(event.body.listing_id);
  if (known?.fate === 'bought') return missing('open listing', known.id);
  state.listings.set(event.body.listing_id, {
    id: event.body.listing_id,
    body: event.body,
    weighedAt: event.at,
    fate: 'open',
    reason: '',
    demo: event.device === 'demo',
  });
  return null;
};

export const listingDropped: Apply<'listing-dropped'> = ({ state }, { body }) => {
  const listing = state.listings.get(body.listing_id);
  if (!listing) return missing('listing', body.listing_id);
  if (listing.fate === 'bought') return missing('open listing', listing.id);
  listing.fate = 'dropped';
  listing.reason = body.reason;
  return null;
};

/** The cost of the lot, postage and tax with it, goes to its items in proportion to what each is expected to be worth. */
export const lotBought: Apply<'lot-bought'> = (fold, event) => {
  const { state } = fold;
  const { body } = event;
  const taken = takenName(state, body);
  if (taken) return taken;
  const costMinor = toBench(body.price_minor + body.postage_minor + body.tax_minor, body, state.settings.currency);
  if (costMinor === null) return missing('price that can be reckoned for lot', body.lot_id);
  const priceMinor = toBench(body.price_minor, body, state.settings.currency)!;
  state.lots.set(body.lot_id, lotOf(event, costMinor, priceMinor));
  const shares = splitByValue(
    costMinor,
    body.items.map((item) => item.expected_value_minor),
  );
  body.items.forEach((spec, index) => addItem(fold, event, spec, shares[index]!));
  post(state, event, [...body.items.map((spec, index) => ['stock', shares[index]!, spec.item_id] as const), ['cash', -costMinor]]);
  buyListing(fold, event);
  return null;
};

export const itemReceived: Apply<'item-received'> = (fold, event) =>
  onItem(fold, event, (item) => {
    item.receivedAt ??= event.at;
    if (item.status === 'bought') item.status = item.kind === 'unit' ? 'on-the-bench' : 'in-the-drawer';
  });

function takenName(state: BenchState, body: EventOf<'lot-bought'>['body']) {
  if (state.lots.has(body.lot_id)) return missing('free name for lot', body.lot_id);
  const names = new Set<string>();
  for (const { item_id } of body.items) {
    if (names.has(item_id) || state.items.has(item_id)) return missing('free name for item', item_id);
    names.add(item_id);
  }
  return null;
}

const lotOf = ({ body, at, device }: EventOf<'lot-bought'>, costMinor: number, priceMinor: number): Lot => ({
  id: body.lot_id,
  title: body.title,
  seller: body.seller,
  listingId: body.listing_id ?? null,
  boughtAt: at,
  costMinor,
  priceMinor,
  itemIds: body.items.map((item) => item.item_id),
  demo: device === 'demo',
});

function addItem(fold: Fold, event: EventOf<'lot-bought'>, spec: EventOf<'lot-bought'>['body']['items'][number], shareMinor: number): void {
  const item = newItem({
    id: spec.item_id,
    number: fold.state.numbers.get(spec.item_id)!,
    name: spec.name,
    kind: spec.kind,
    modelId: spec.model_id,
    lotId: event.body.lot_id,
    slot: spec.kind === 'assembly' ? (spec.slot ?? '') : '',
    status: 'bought',
    demo: event.device === 'demo',
  });
  item.expectedMinor = toBench(spec.expected_value_minor, event.body, fold.state.settings.currency);
  item.costs.push({ reason: 'lot', amountMinor: shareMinor, eventId: event.id, text: `share of "${event.body.title}"` });
  fold.state.items.set(item.id, item);
  touch(fold, item, event.at);
}

/** What the seller said in the listing counts for the units of its model that came of it. */
function buyListing({ state }: Fold, event: EventOf<'lot-bought'>): void {
  const listing = state.listings.get(event.body.listing_id ?? '');
  if (!listing || listing.fate === 'bought') return;
  listing.fate = 'bought';
  listing.reason = '';
  for (const { item_id } of event.body.items) {
    const item = state.items.get(item_id)!;
    if (item.kind === 'unit' && item.modelId === listing.body.model_id) hearClaims(item, listing.body.claims, event);
  }
}

function hearClaims(item: Item, claims: EventOf<'listing-weighed'>['body']['claims'], event: EventOf<'lot-bought'>): void {
  for (const claim of claims) {
    item.history.push({ kind: 'claim', claim, seller: event.body.seller, eventId: event.id, at: event.at });
  }
}
