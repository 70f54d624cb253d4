import type { StockThing } from '../../core/books/index.ts';
import { splitMinor } from '../../core/quantity/index.ts';
import type { BenchState, Item, Lot } from '../state.ts';

/** A thing of the stock book with the item that it is. */
export interface ItemThing extends StockThing {
  readonly itemId: string;
}

/**
 * The things bought for resale, at what was paid to the seller for each: postage, import tax, parts and work are no part of it, and cost that moved
 * with a transplant stays where it was bought. Assemblies taken out of a unit and sold by themselves stand at nothing.
 */
export function stockThings(state: Readonly<BenchState>): ItemThing[] {
  const bought = [...state.lots.values()].flatMap((lot) => ofLot(state, lot));
  const taken = [...state.items.values()].filter((item) => item.lotId === null && item.sale !== null);
  return [...bought, ...taken.map((item) => thing(item, { boughtOn: item.sale!.at, invoice: '', seller: '', purchaseMinor: 0 }))];
}

function ofLot(state: Readonly<BenchState>, lot: Lot): ItemThing[] {
  const items = lot.itemIds.map((id) => state.items.get(id)!);
  const shares = items.map(({ costs }) => Math.max(0, costs.find(({ reason }) => reason === 'lot')?.amountMinor ?? 0));
  const prices = splitMinor(lot.priceMinor, shares);
  return items.map((item, i) => thing(item, { boughtOn: lot.boughtAt, invoice: lot.id, seller: lot.seller, purchaseMinor: prices[i]! }));
}

interface Purchase {
  readonly boughtOn: string;
  readonly invoice: string;
  readonly seller: string;
  readonly purchaseMinor: number;
}

const thing = (item: Item, { boughtOn, invoice, seller, purchaseMinor }: Purchase): ItemThing => ({
  itemId: item.id,
  boughtOn: boughtOn.slice(0, 10),
  purchaseInvoice: invoice,
  seller,
  description: `#${item.number} ${item.name}`,
  purchaseMinor,
  left: leftBy(item),
});

function leftBy(item: Item): StockThing['left'] {
  if (item.sale)
    return {
      on: item.sale.at.slice(0, 10),
      invoice: `S-${item.number}`,
      buyer: item.sale.buyer,
      saleMinor: item.sale.priceMinor + item.sale.postageChargedMinor,
    };
  if (item.status === 'scrapped' || item.status === 'kept') return { on: item.changedAt.slice(0, 10), how: item.status };
  return null;
}
