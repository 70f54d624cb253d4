import { priceOf, type PriceInterval } from '../../core/market/index.ts';
import type { Advisor, Expected } from '../advice/index.ts';
import { costOf } from '../books/carried.ts';
import type { BenchEvent } from '../events/index.ts';
import { conditionOf, originalShare } from '../market/sales-of.ts';
import { pricesKnown } from '../market/prices-known.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';

/** What was thought just before an event, and what the event then said. */
export type Judged =
  | { readonly about: 'trial' | 'remedy'; readonly itemId: string; readonly chance: number; readonly came: boolean }
  | { readonly about: 'start'; readonly itemId: string; readonly expected: Expected; readonly since: Since }
  | { readonly about: 'price'; readonly itemId: string; readonly at: string; readonly expected: PriceInterval; readonly cameMinor: number };

/** How an item stood, from where on its road is reckoned. */
export interface Since {
  readonly minutes: number;
  readonly costMinor: number;
  readonly partsMinor: number;
  readonly hourMinor: number;
}

/** Kinds of event that settle something that was thought, or begin the road of a unit. */
const JUDGED: ReadonlySet<string> = new Set(['trial-done', 'remedy-done', 'item-received', 'sold']);

export const isJudged = ({ kind }: BenchEvent): boolean => JUDGED.has(kind);

/** What is thought before an event in a state that does not know it yet; null where nothing can be held against it. */
export function judge(advisor: Advisor, models: ReadonlyMap<string, Model>, state: Readonly<BenchState>, event: BenchEvent): Judged | null {
  const item = 'item_id' in event.body ? state.items.get(event.body.item_id ?? '') : undefined;
  if (!item) return null;
  switch (event.kind) {
    case 'trial-done':
      return event.body.with.length > 0
        ? null
        : said('trial', item, advisor.foresight(state, item.id)?.works(event.body.function), event.body.outcome === 'works');
    case 'remedy-done':
      return event.body.outcome === 'not-tried-yet'
        ? null
        : said('remedy', item, advisor.foresight(state, item.id)?.mended(event.body.remedy), event.body.outcome === 'mended');
    case 'item-received':
      return startOf(advisor, state, item);
    case 'sold':
      return priceBefore(models, state, item, event);
    default:
      return null;
  }
}

const said = (about: 'trial' | 'remedy', item: Item, chance: number | null | undefined, came: boolean): Judged | null =>
  chance === null || chance === undefined ? null : { about, itemId: item.id, chance: Math.min(1, Math.max(0, chance)), came };

function startOf(advisor: Advisor, state: Readonly<BenchState>, item: Item): Judged | null {
  const expected = item.kind === 'unit' ? advisor.foresight(state, item.id)?.end() : null;
  if (!expected) return null;
  const since = { minutes: item.minutes, costMinor: costOf(item), partsMinor: partsOf(item), hourMinor: state.settings.hourValueMinor };
  return { about: 'start', itemId: item.id, expected, since };
}

/** What parts for it cost, minor units. */
export const partsOf = (item: Item): number =>
  item.costs.reduce((sum, { reason, amountMinor }) => (reason === 'part' ? sum + amountMinor : sum), 0);

function priceBefore(
  models: ReadonlyMap<string, Model>,
  state: Readonly<BenchState>,
  item: Item,
  { body, at }: Extract<BenchEvent, { kind: 'sold' }>,
): Judged | null {
  const model = models.get(item.modelId);
  if (item.kind !== 'unit' || !model || body.price_minor <= 0 || body.currency !== state.settings.currency) return null;
  const condition = body.as === 'for-parts' ? 'parts' : conditionOf(item);
  const expected = priceOf(pricesKnown(state, model), { condition, complete: null, original: originalShare(state, model, item) });
  return { about: 'price', itemId: item.id, at, expected, cameMinor: body.price_minor };
}
