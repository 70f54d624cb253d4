import { accountOf, costOf, isGone } from '../books/carried.ts';
import { post, type Posting } from '../books/post.ts';
import { toBench } from '../books/to-bench.ts';
import type { EventOf } from '../events/index.ts';
import { contentsOf } from '../slots.ts';
import type { Item, Sale } from '../state.ts';
import type { Status } from '../views/index.ts';
import type { Apply, Fold, Missing } from './fold.ts';
import { missing, onItem, touch } from './fold.ts';
import { keepVersion } from './growing.ts';

export const listed: Apply<'listed'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const lack = lackingToLeave(item);
    if (lack) return lack;
    leaveTo(fold, event, item, 'listed');
    const { price_minor: priceMinor, place } = event.body;
    item.asking = { priceMinor, place, at: event.at };
    item.offers.push({ priceMinor, place, from: event.at, until: null, sold: false });
    return null;
  });

/** Income against cost: what came in, what it cost to sell, and the carried cost from stock to cost of sales. */
export const sold: Apply<'sold'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const lack = lackingToLeave(item);
    if (lack) return lack;
    const sale = saleOf(fold, event, item);
    if (!sale) return missing('price that can be reckoned for item', item.id);
    item.sale = sale;
    const charged = sale.priceMinor + sale.postageChargedMinor;
    post(fold.state, event, [
      ['cash', charged - sale.feesMinor - sale.postageMinor, item.id],
      ['sales', -charged, item.id],
      ['fees', sale.feesMinor, item.id],
      ['postage-out', sale.postageMinor, item.id],
    ]);
    leaveTo(fold, event, item, 'sold');
    return null;
  });

/** It is on the bench again with the cost that it had; it must be proved and graded anew. */
export const returned: Apply<'returned'> = (fold, event) =>
  onItem(fold, event, (item) => {
    if (item.status !== 'sold' || item.sale === null) return missing('sale of item', item.id);
    const { refund_minor: refund, fees_back_minor: feesBack, postage_minor: postage } = event.body;
    post(fold.state, event, [
      ['cash', feesBack - refund - postage, item.id],
      ['refunds', refund, item.id],
      ['fees', -feesBack, item.id],
      ['postage-out', postage, item.id],
    ]);
    leaveTo(fold, event, item, item.kind === 'unit' ? 'on-the-bench' : 'in-the-drawer');
    item.sale = null;
    item.asking = null;
    item.grade = null;
    item.proof.clear();
    item.returns += 1;
    return null;
  });

export const scrapped: Apply<'scrapped'> = (fold, event) => goes(fold, event, 'scrapped');

export const kept: Apply<'kept'> = (fold, event) => goes(fold, event, 'kept');

const goes = (fold: Fold, event: EventOf<'scrapped'> | EventOf<'kept'>, status: 'scrapped' | 'kept'): Missing | null =>
  onItem(fold, event, (item) => {
    const lack = lackingToLeave(item);
    if (lack) return lack;
    leaveTo(fold, event, item, status);
    return null;
  });

/** Only what is still here and sits in nothing can be sold, kept or scrapped. */
function lackingToLeave(item: Item): Missing | null {
  if (isGone(item)) return missing('item at hand called', item.id);
  return item.inside === null ? null : missing('item standing alone called', item.id);
}

const HAS_LEFT: ReadonlySet<Status> = new Set(['sold', 'scrapped', 'kept']);

/** The item and what sits in it change status together, and their cost goes to the account of that status. */
function leaveTo(fold: Fold, event: { readonly id: string; readonly at: string }, item: Item, status: Status): void {
  moveCost(fold, event, item, status);
  for (const assembly of contentsOf(item, fold.state.items)) {
    moveCost(fold, event, assembly, HAS_LEFT.has(status) ? status : 'in-a-unit');
    touch(fold, assembly, event.at);
  }
}

function moveCost(fold: Fold, event: { readonly id: string; readonly at: string }, item: Item, status: Status): void {
  const cost = costOf(item);
  endOffer(item, event.at, status === 'sold');
  const [from, to] = [accountOf(item.status), accountOf(status)];
  item.status = status;
  if (HAS_LEFT.has(status)) keepVersion(fold, item);
  else item.modelVersion = null;
  if (from === to) return;
  const postings: Posting[] = [
    [to, cost, item.id],
    [from, -cost, item.id],
  ];
  post(fold.state, event, postings);
}

function saleOf({ state }: Fold, { body, at }: EventOf<'sold'>, item: Item): Sale | null {
  const amounts = [body.price_minor, body.postage_charged_minor, body.fees_minor, body.postage_minor].map((amount) =>
    toBench(amount, body, state.settings.currency),
  );
  if (!amounts.every((amount) => amount !== null)) return null;
  const [priceMinor, postageChargedMinor, feesMinor, postageMinor] = amounts as [number, number, number, number];
  return { as: body.as, at, priceMinor, postageChargedMinor, feesMinor, postageMinor, costMinor: costOf(item), buyer: body.buyer };
}

/** Whatever comes next, it is not offered at that price any more. */
function endOffer(item: Item, at: string, wasSold: boolean): void {
  const last = item.offers.at(-1);
  if (last?.until === null) Object.assign(last, { until: at, sold: wasSold });
}
