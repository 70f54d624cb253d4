import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { BreakdownView } from '../views/index.ts';
import { costOf, isGone } from './carried.ts';
import { incomeByItem } from './money-of.ts';

type Line = BreakdownView['by_model'][number];

interface Done {
  readonly item: Item;
  readonly profitMinor: number;
}

/** Profit and hours of the units that have left, by model, by seller and by remedy, and what was thought of each beforehand. */
export function breakdownView(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): Omit<BreakdownView, 'returns'> {
  const incomes = incomeByItem(state.journal);
  const done = [...state.items.values()]
    .filter((item) => item.kind === 'unit' && isGone(item))
    .map((item) => ({ item, profitMinor: (incomes.get(item.id) ?? 0) - costOf(item) }));
  const nameOf = (modelId: string): string => models.get(modelId)?.file.name ?? modelId;
  return {
    currency: state.settings.currency,
    by_model: linesOf(done, ({ item }) => [[item.modelId, nameOf(item.modelId)]]),
    by_seller: linesOf(done, ({ item }) => {
      const seller = state.lots.get(item.lotId ?? '')?.seller ?? 'unknown';
      return [[seller, seller]];
    }),
    by_remedy: linesOf(done, ({ item }) => remediesOf(item, models)),
    estimates: done.flatMap(({ item }) => estimateOf(item)),
  };
}

/** One line for each name that a unit falls under, most profit first. */
function linesOf(done: readonly Done[], namesOf: (each: Done) => readonly (readonly [id: string, name: string])[]): Line[] {
  const lines = new Map<string, Line>();
  for (const each of done) {
    for (const [id, name] of namesOf(each)) {
      const line = lines.get(id) ?? { id, name, units: 0, profit_minor: 0, minutes: 0, profit_per_hour_minor: null };
      const profit = line.profit_minor + each.profitMinor;
      const minutes = line.minutes + each.item.minutes;
      lines.set(id, {
        ...line,
        units: line.units + 1,
        profit_minor: profit,
        minutes,
        profit_per_hour_minor: minutes > 0 ? Math.round((profit * 60) / minutes) : null,
      });
    }
  }
  return [...lines.values()].sort((a, b) => b.profit_minor - a.profit_minor);
}

/** Each remedy that was done to it, once. */
function remediesOf(item: Item, models: ReadonlyMap<string, Model>): (readonly [string, string])[] {
  const ids = new Set(item.history.flatMap((entry) => (entry.kind === 'remedy' ? [entry.remedy] : [])));
  const named = models.get(item.modelId)?.file.remedies;
  return [...ids].map((id) => [id, named?.find((remedy) => remedy.id === id)?.name ?? id] as const);
}

/** What it was thought to be worth when it was bought, and what it was sold for. */
const estimateOf = (item: Item): BreakdownView['estimates'] =>
  item.sale && item.expectedMinor !== null
    ? [{ item_id: item.id, number: item.number, name: item.name, expected_minor: item.expectedMinor, sold_minor: item.sale.priceMinor }]
    : [];
