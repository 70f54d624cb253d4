import type { BenchEvent, Kind } from '../events/index.ts';
import type { LogWords } from '../log-words.ts';
import type { StoryChoices } from './unit-story.ts';

type Deal = Extract<Kind, 'lot-bought' | 'listed' | 'sold' | 'returned'>;
type DealEvent = Extract<BenchEvent, { kind: Deal }>;

const DEALS: ReadonlySet<string> = new Set<Deal>(['lot-bought', 'listed', 'sold', 'returned']);
export const isDeal = (event: BenchEvent): event is DealEvent => DEALS.has(event.kind);

/** A purchase or a sale as a story tells it: amounts and names only where they are chosen. */
export function dealWords(words: LogWords, event: DealEvent, { money, persons }: Pick<StoryChoices, 'money' | 'persons'>): string {
  const amount = (minor: number, currency?: string): string => (money ? ` for ${words.money(minor, currency)}` : '');
  const person = (lead: string, name: string): string => (persons && name !== '' ? ` ${lead} ${name}` : '');
  if (event.kind === 'lot-bought') {
    const { price_minor, postage_minor, tax_minor, currency, items, seller } = event.body;
    const others = items.length > 1 ? `, with ${items.length - 1} more` : '';
    return `Bought${person('from', seller)}${others}${amount(price_minor + postage_minor + tax_minor, currency)}.`;
  }
  if (event.kind === 'listed') return `Put up for sale${person('at', event.body.place)}${amount(event.body.price_minor)}.`;
  if (event.kind === 'sold') return `Sold${person('to', event.body.buyer)}${amount(event.body.price_minor, event.body.currency)}.`;
  return `Came back${money ? `, ${words.money(event.body.refund_minor)} refunded` : ''}.`;
}
