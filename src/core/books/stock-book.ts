import { marginTax } from './margin-scheme.ts';

/** One thing bought for resale, as the margin scheme wants it; days as "2026-03-01". */
export interface StockThing {
  readonly boughtOn: string;
  readonly purchaseInvoice: string;
  readonly seller: string;
  readonly description: string;
  readonly purchaseMinor: number;
  /** How it left: sold, or written off in some way; null while it is in stock. */
  readonly left:
    | { readonly on: string; readonly invoice: string; readonly buyer: string; readonly saleMinor: number }
    | { readonly on: string; readonly how: string }
    | null;
}

/** A line of the stock book: its nine fields. HMRC Notice 718, sections 4 and 5. */
export interface StockLine {
  readonly number: number;
  readonly dates: { readonly purchase: string; readonly sale: string };
  readonly invoices: { readonly purchase: string; readonly sale: string };
  readonly names: { readonly seller: string; readonly buyer: string };
  readonly description: string;
  readonly purchaseMinor: number;
  /** Price, or the way in which it was disposed of; empty while it is in stock. */
  readonly saleMinor: number | string;
  /** Null until it is sold. */
  readonly marginMinor: number | null;
  readonly taxMinor: number | null;
}

/** The stock book in the order of purchase, numbered without gaps from 1. */
export function stockBook(things: readonly StockThing[], ratePercent: number): StockLine[] {
  const order = [...things].sort((a, b) => (a.boughtOn < b.boughtOn ? -1 : a.boughtOn > b.boughtOn ? 1 : 0));
  return order.map((thing, i) => lineOf(thing, i + 1, ratePercent));
}

function lineOf(
  { left, boughtOn, purchaseInvoice, seller, description, purchaseMinor }: StockThing,
  number: number,
  ratePercent: number,
): StockLine {
  const sale = left && 'saleMinor' in left ? left : null;
  return {
    number,
    dates: { purchase: boughtOn, sale: left?.on ?? '' },
    invoices: { purchase: purchaseInvoice, sale: sale?.invoice ?? '' },
    names: { seller, buyer: sale?.buyer ?? '' },
    description,
    purchaseMinor,
    saleMinor: sale ? sale.saleMinor : left && 'how' in left ? left.how : '',
    marginMinor: sale ? sale.saleMinor - purchaseMinor : null,
    taxMinor: sale ? marginTax(purchaseMinor, sale.saleMinor, ratePercent) : null,
  };
}
