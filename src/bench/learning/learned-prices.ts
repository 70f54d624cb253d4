import {
  ageWeight,
  fitPrices,
  SALE_HALF_LIFE_DAYS,
  typicalPriceOf,
  type Condition,
  type PriceFit,
  type Sale,
} from '../../core/market/index.ts';
import { formatMinor } from '../../core/quantity/index.ts';
import { dayNumber } from '../market/day-number.ts';
import { priorOf, pricesKnown } from '../market/prices-known.ts';
import { salesOf } from '../market/sales-of.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';

type Number = LearnedView['numbers'][number];

export interface LearnedPrices {
  readonly numbers: readonly Number[];
  /** Standard deviation of the logarithm of single prices. */
  readonly spread: number;
}

/** What a model typically sells for, working and for parts, moved from the shipped price by the ratio that known sales show; null while none counts. */
export function learnedPrices(state: Readonly<BenchState>, model: Model): LearnedPrices | null {
  const id = idOf(model, 'price');
  const reset = state.learning.resets.get(id);
  const since = reset === undefined ? -Infinity : dayNumber(reset);
  const sales = salesOf(state, model).filter(({ day }) => day >= since);
  if (sales.length === 0) return null;
  const fit = pricesKnown(state, model, sales);
  const start = fitPrices([], priorOf(model), 0);
  const jobs = jobsOf(state, sales);
  const { working, for_parts: forParts } = model.file.prices;
  const number = (about: 'price' | 'price-for-parts', name: string, before: number, condition: Condition): Number => ({
    id: idOf(model, about),
    about,
    unit: 'minor',
    model_id: model.file.id,
    name: `${name}, ${model.file.name}`,
    before,
    ...moved(before, start, fit, condition),
    jobs,
    reset_at: reset ?? null,
  });
  return {
    numbers: [
      number('price', 'Price of a working one', working, 'B'),
      number('price-for-parts', 'Price of a faulty one, for parts', forParts, 'parts'),
    ],
    spread: fit.spread,
  };
}

const idOf = ({ file }: Model, about: 'price' | 'price-for-parts'): string => `${about}.${file.id}`;

function moved(before: number, start: PriceFit, fit: PriceFit, condition: Condition): Pick<Number, 'mean' | 'low' | 'high'> {
  const features = { condition, complete: null, original: null };
  const now = typicalPriceOf(fit, features);
  const factor = before / typicalPriceOf(start, features).middleMinor;
  return { mean: factor * now.middleMinor, low: factor * now.lowMinor, high: factor * now.highMinor };
}

function jobsOf(state: Readonly<BenchState>, sales: readonly Sale[]): Number['jobs'] {
  const today = Math.max(state.newestAt === '' ? 0 : dayNumber(state.newestAt), sales.at(-1)!.day);
  const booked = new Map(
    state.journal.flatMap((line) => (line.account === 'sales' && line.itemId !== null ? [[line.itemId, line] as const] : [])),
  );
  return sales.map(({ id, day, priceMinor, condition }) => {
    const item = state.items.get(id);
    const at = item?.sale?.at ?? new Date(day * 86_400_000).toISOString();
    const what = condition === 'parts' ? 'for parts' : `condition ${condition}`;
    return {
      event_id: booked.get(id)?.eventId ?? state.sightings.get(id)?.eventId ?? '',
      item_id: item?.id ?? null,
      at,
      text: `${item ? `#${item.number} ${item.name}` : 'Seen elsewhere'}: ${formatMinor(priceMinor, state.settings.currency)}, ${what}`,
      weight: ageWeight(today - day, SALE_HALF_LIFE_DAYS),
    };
  });
}
