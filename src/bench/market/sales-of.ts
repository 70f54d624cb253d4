import type { Condition, Sale } from '../../core/market/index.ts';
import { CONDITIONS } from '../../core/market/index.ts';
import type { Model } from '../models/index.ts';
import { slotContent } from '../slots.ts';
import type { BenchState, Item } from '../state.ts';
import { dayNumber } from './day-number.ts';

/** All sales of a model that are known: those seen elsewhere, and the bench's own of whole units. Oldest first. */
export function salesOf(state: Readonly<BenchState>, model: Model): Sale[] {
  const seen = [...state.sightings.values()]
    .filter(({ modelId }) => modelId === model.file.id)
    .map(({ id, day, priceMinor, condition, complete, original }) => ({
      id,
      day: dayNumber(day),
      priceMinor,
      condition,
      complete,
      original,
    }));
  const own = [...state.items.values()]
    .filter(({ kind, modelId }) => kind === 'unit' && modelId === model.file.id)
    .flatMap((item) => ownSale(state, model, item));
  return [...seen, ...own].sort((a, b) => a.day - b.day || (a.id < b.id ? -1 : 1));
}

function ownSale(state: Readonly<BenchState>, model: Model, item: Item): Sale[] {
  const { sale } = item;
  if (!sale || sale.priceMinor <= 0) return [];
  const condition = sale.as === 'for-parts' ? 'parts' : conditionOf(item);
  const original = originalShare(state, model, item);
  return [{ id: item.id, day: dayNumber(sale.at), priceMinor: sale.priceMinor, condition, complete: null, original }];
}

/** As it was graded; the middle grade where it was not. */
export const conditionOf = (item: Pick<Item, 'grade'>): Condition => CONDITIONS.find((name) => name === item.grade?.grade) ?? 'B';

/** Share of the assemblies whose originality matters that are the unit's own; null when the model names none. */
export function originalShare(state: Readonly<BenchState>, model: Model, item: Item): number | null {
  const matter = model.file.slots.filter((slot) => slot.original_matters);
  if (matter.length === 0) return null;
  const own = matter.filter(({ id }) => slotContent(item, id, state.items, model).holds === 'its-own');
  return own.length / matter.length;
}
