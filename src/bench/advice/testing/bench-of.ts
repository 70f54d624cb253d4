import { foldLog } from '../../fold/index.ts';
import type { Model } from '../../models/schema.ts';
import type { BenchState } from '../../state.ts';
import { testLog, type Step } from '../../testing/events.ts';
import { pocketModels } from './pocket-model.ts';

type Steps = readonly Step[];

/** The state after such steps, over the pocket player's models unless others are given. */
export function benchOf(steps: Steps, models: ReadonlyMap<string, Model> = pocketModels()): BenchState {
  const state = foldLog(testLog(...steps), models);
  if (state.orphans.length > 0) throw new Error(`the test's log does not fold: ${JSON.stringify(state.orphans)}`);
  return state;
}

/** A lot of one or more units of a model, received, with what the seller claims of each. */
export function bought(lot: string, seller: string, items: readonly string[], modelId = 'pocket-1', claims: readonly object[] = []): Steps {
  const listing = `listing-${lot}`;
  return [
    [
      'listing-weighed',
      { listing_id: listing, title: lot, seller, model_id: modelId, count: items.length, price_minor: 2000, currency: 'GBP', claims },
    ],
    [
      'lot-bought',
      {
        lot_id: lot,
        listing_id: listing,
        title: lot,
        seller,
        price_minor: 2000,
        currency: 'GBP',
        items: items.map((id) => ({ item_id: id, name: `Unit ${id}`, model_id: modelId, expected_value_minor: 1000 })),
      },
    ],
    ...items.map((id) => ['item-received', { item_id: id }] as Steps[number]),
  ];
}

export const tried = (
  item: string,
  fn: string,
  outcome: 'works' | 'fails' | 'comes-and-goes',
  aids: readonly string[] = [],
): Steps[number] => ['trial-done', { item_id: item, function: fn, outcome, with: aids }];

export const saw = (item: string, place: string, sees: string): Steps[number] => ['finding-noted', { item_id: item, place, sees }];

export const did = (item: string, remedy: string, outcome: string): Steps[number] => [
  'remedy-done',
  { item_id: item, remedy, minutes: 5, outcome },
];

export const moved = (assembly: string, slot: string, from: string | null, to: string | null): Steps[number] => [
  'transplant-done',
  { assembly_id: assembly, slot, from_item: from, to_item: to },
];

export const claims = (fn: string, says: 'works' | 'fails' | 'comes-and-goes') => ({ about: 'function', function: fn, says });
