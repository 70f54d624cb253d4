import { describe, expect, it } from 'vitest';
import { partFromDrawing } from '../../../core/fit/index.ts';
import { recordOf } from '../../../bench/fit/index.ts';
import { addUnit } from './add-unit.ts';
import { buyBag } from './buy-bag.ts';
import { buyLot } from './buy-lot.ts';
import { cancelOrder } from './cancel-order.ts';
import { dropListing } from './drop-listing.ts';
import { keepListing } from './keep-listing.ts';
import { orderArrived } from './order-arrived.ts';
import { placeOrder } from './place-order.ts';
import { setBag } from './set-bag.ts';
import { takeFromBag } from './take-from-bag.ts';
import { kindsOf, recordable } from './testing/recordable.ts';

const claims = [{ about: 'function', function: 'sound', says: 'fails' }] as const;
const lot = {
  lotId: 'lot-1',
  title: 'Two Terns',
  seller: 'Attic Wren',
  priceMinor: 3000,
  postageMinor: 400,
  taxMinor: 0,
  currency: 'GBP',
  rate: 1,
  modelId: 'tern-tn-10',
  units: [
    { itemId: 'unit-1', name: 'Tern, 1 of 2', expectedValueMinor: 4000 },
    { itemId: 'unit-2', name: 'Tern, 2 of 2', expectedValueMinor: 2000 },
  ],
  claims,
};

describe('buying a lot', () => {
  it('says the claims of each unit when there was no listing to hold them', () => {
    expect(kindsOf(buyLot(lot))).toEqual(['lot-bought', 'claim-made', 'claim-made']);
  });

  it('may hold units of other models', () => {
    const units = [...lot.units, { itemId: 'unit-3', modelId: 'corrie-cp4', name: 'A Corrie', expectedValueMinor: 1000 }];
    const items = ['tern-tn-10', 'tern-tn-10', 'corrie-cp4'].map((model_id) => ({ model_id }));
    expect(recordable(buyLot({ ...lot, units }))[0]).toMatchObject({ body: { items } });
  });

  it('leaves the claims to the listing when there was one, so that they count once', () => {
    const [event, ...others] = recordable(buyLot({ ...lot, listingId: 'listing-1' }));
    expect(others).toEqual([]);
    expect(event).toMatchObject({
      body: { listing_id: 'listing-1', items: [{ expected_value_minor: 4000 }, { expected_value_minor: 2000 }] },
    });
  });
});

describe('adding one unit', () => {
  const unit = { lotId: 'lot-1', itemId: 'unit-1', name: 'red player', modelId: 'any-pocket-player', seller: 'not named', paidMinor: 0 };

  it('records purchase, claims and arrival when it lies here', () => {
    expect(kindsOf(addUnit({ ...unit, currency: 'GBP', claims, here: true }))).toEqual(['lot-bought', 'claim-made', 'item-received']);
  });

  it('leaves arrival out while it is on its way', () => {
    expect(kindsOf(addUnit({ ...unit, currency: 'GBP', claims: [], here: false }))).toEqual(['lot-bought']);
  });
});

describe('listings, bags and orders', () => {
  it('keeps and drops a listing', () => {
    const listing = { listingId: 'listing-1', text: '', count: 2, closesAt: '2026-12-01T18:30:00.000Z', photos: ['ab'.repeat(32)], ...lot };
    expect(recordable(keepListing(listing))).toMatchObject([
      { kind: 'listing-weighed', body: { count: 2, price_minor: 3000, claims, closes_at: listing.closesAt, photos: listing.photos } },
    ]);
    expect(recordable(dropListing('listing-1', 'too dear'))).toMatchObject([{ kind: 'listing-dropped', body: { reason: 'too dear' } }]);
  });

  it('buys a bag and takes from it', () => {
    const bag = {
      bagId: 'bag-1',
      part: 'fuse',
      name: 'Fuse 1 A',
      count: 10,
      priceMinor: 250,
      currency: 'GBP',
      place: 'tray 2',
      pattern: null,
    };
    expect(recordable(buyBag(bag))).toMatchObject([{ body: { bag_id: 'bag-1', count: 10, price_minor: 250, place: 'tray 2' } }]);
    const pattern = recordOf(
      partFromDrawing({
        name: 'two',
        kind: 'chip',
        sides: 2,
        pins: 2,
        pitchMm: 0,
        spanMm: [2, 2],
        footMm: [0.4, 0.4],
        widthMm: [1, 1],
        heightMm: null,
        legMm: null,
        pegs: null,
      }),
    );
    expect(recordable(buyBag({ ...bag, pattern }))).toMatchObject([
      { body: { pattern: { name: 'two', basis: 'feet', pads: [{ pin: '1' }, { pin: '2' }] } } },
    ]);
    expect(recordable(takeFromBag('bag-1', 'Fuse 1 A', 'unit-1', 2))).toMatchObject([{ body: { count: 2 } }]);
  });

  it('places an order and takes it in', () => {
    const line = { part: 'fuse', name: 'Fuse 1 A', count: 10, priceMinor: 250 };
    const order = { orderId: 'order-1', supplier: 'Copper Lane', lines: [line], postageMinor: 120, currency: 'GBP', dueDay: null };
    expect(recordable(placeOrder(order))).toMatchObject([{ body: { lines: [{ part: 'fuse', price_minor: 250 }], postage_minor: 120 } }]);
    expect(recordable(placeOrder({ ...order, dueDay: '2026-05-09' }))).toMatchObject([{ body: { due_day: '2026-05-09' } }]);
    expect(recordable(orderArrived('order-1', 'tray 2'))).toMatchObject([{ kind: 'order-arrived', body: { place: 'tray 2' } }]);
    expect(recordable(orderArrived('order-1', '', [3]))).toMatchObject([{ kind: 'order-arrived', body: { counts: [3] } }]);
    expect(recordable(cancelOrder('order-1', 70, 'sold out'))).toMatchObject([
      { kind: 'order-cancelled', body: { refund_minor: 70, reason: 'sold out' } },
    ]);
  });

  it('puts a bag elsewhere and keeps its terminals', () => {
    expect(recordable(setBag('bag-1', 'Fuse 1 A', { place: 'tray 3' }))).toMatchObject([{ kind: 'bag-set', body: { place: 'tray 3' } }]);
    expect(recordable(setBag('bag-1', 'Fuse 1 A', { pattern: null }))).toMatchObject([{ kind: 'bag-set', body: { pattern: null } }]);
  });
});
