import type { PilePart, Remedy, Supplier } from '../../core/planning/index.ts';
import { partPrice } from '../advice/device-model.ts';
import { partsAtHand } from '../advice/drawer-parts.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Order } from '../state.ts';

/** Who sells what no supplier on file does: at the model's price. */
export const BY_THE_WAY = 'any shop';
/** Days of an order where none has come yet. Common practice, no source. */
const USUAL_DAYS = 7;
/** What a part that is left over is worth of what it cost. Common practice, no source. */
const LEFT_SHARE = 0.5;
const DAY_MS = 86_400_000;

/** Parts by name, and how many of them some remedy takes at once at most. */
export const partsUsed = (remedies: readonly Remedy[]): ReadonlySet<string> => new Set(remedies.flatMap(({ uses }) => Object.keys(uses)));

/**
 * Who sells which of these parts: suppliers as they were typed in; else as their orders went; and for what nobody on file sells, any shop at
 * the model's own price, without postage.
 */
export function planSuppliers(state: Readonly<BenchState>, models: readonly Model[], parts: ReadonlySet<string>): Supplier[] {
  const typed = [...state.planning.suppliers.values()].map(({ name, postageMinor, days, offers }) => ({
    id: name,
    postageMinor,
    days,
    offers,
  }));
  const names = new Set(typed.map(({ id }) => id));
  const learned = ordersBySupplier(state).filter(({ id }) => !names.has(id));
  const known = [...typed, ...learned].map((supplier) => ({ ...supplier, offers: supplier.offers.filter(({ part }) => parts.has(part)) }));
  const sold = new Set(known.flatMap(({ offers }) => offers.map(({ part }) => part)));
  const others = [...parts].filter((part) => !sold.has(part)).map((part) => ({ part, unitMinor: modelPrice(models, part), least: 1 }));
  const shop = { id: BY_THE_WAY, postageMinor: 0, days: USUAL_DAYS, offers: others };
  return [...known, ...(others.length > 0 ? [shop] : [])].filter(({ offers }) => offers.length > 0);
}

function modelPrice(models: readonly Model[], part: string): number {
  const knowing = models.find(({ file }) => file.parts.some(({ id }) => id === part));
  return knowing ? partPrice(knowing.file, part) : 0;
}

/** The latest price of each part, and postage and days in the middle of the orders. */
function ordersBySupplier({ orders }: Readonly<BenchState>): Supplier[] {
  const bySupplier = new Map<string, Order[]>();
  for (const order of orders.values()) bySupplier.set(order.supplier, [...(bySupplier.get(order.supplier) ?? []), order]);
  return [...bySupplier].map(([id, own]) => {
    const sorted = own.toSorted((a, b) => (a.placedAt < b.placedAt ? -1 : 1));
    const prices = new Map(sorted.flatMap((order) => order.lines.map((line) => [line.part, eachMinor(order, line)] as const)));
    return {
      id,
      postageMinor: sorted.reduce((sum, { postageMinor }) => sum + postageMinor, 0) / sorted.length,
      days: daysOf(sorted),
      offers: [...prices].map(([part, unitMinor]) => ({ part, unitMinor, least: 1 })),
    };
  });
}

/** What one of a line cost in the currency of the bench: lines share what the order cost beside its postage. */
function eachMinor({ lines, costMinor, postageMinor }: Order, line: Order['lines'][number]): number {
  const all = lines.reduce((sum, { price_minor: price }) => sum + price, 0);
  return all > 0 ? ((costMinor - postageMinor) * line.price_minor) / all / line.count : 0;
}

function daysOf(orders: readonly Order[]): number {
  const days = orders.flatMap(({ placedAt, arrivedAt }) =>
    arrivedAt === null ? [] : [(Date.parse(arrivedAt) - Date.parse(placedAt)) / DAY_MS],
  );
  return days.length === 0 ? USUAL_DAYS : Math.max(0, Math.round(days.reduce((a, b) => a + b, 0) / days.length));
}

/** The parts as the plan sees them: what lies in the drawer or is on its way, and what one that is left over is worth. */
export function planParts(state: Readonly<BenchState>, parts: ReadonlySet<string>, suppliers: readonly Supplier[]): PilePart[] {
  const stock = partsAtHand(state);
  const coming = partsComing(state);
  return [...parts].sort().map((id) => {
    const offers = suppliers.flatMap((supplier) => supplier.offers.filter(({ part }) => part === id).map(({ unitMinor }) => unitMinor));
    const each = Math.min(stock.get(id)?.eachMinor || Infinity, ...offers);
    const keptMinor = Number.isFinite(each) ? LEFT_SHARE * each : 0;
    return { id, stock: (stock.get(id)?.count ?? 0) + (coming.get(id) ?? 0), keptMinor, fills: [] };
  });
}

function partsComing({ orders }: Readonly<BenchState>): ReadonlyMap<string, number> {
  const coming = new Map<string, number>();
  for (const { lines, arrivedAt } of orders.values())
    if (arrivedAt === null) for (const { part, count } of lines) coming.set(part, (coming.get(part) ?? 0) + count);
  return coming;
}
