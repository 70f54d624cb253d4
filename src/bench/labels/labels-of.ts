import { isGone } from '../books/carried.ts';
import type { Model } from '../models/index.ts';
import { findItem } from '../show/item-file.ts';
import type { Bag, BenchState, Item } from '../state.ts';
import type { Label } from './layout-labels.ts';

/** Ids or, of items, stock numbers; `all`: everything that is at hand. */
export type WantedNames = readonly string[] | 'all';

export interface WantedLabels {
  readonly items: WantedNames;
  readonly bags: WantedNames;
  /** Where the bench is opened, such as http://127.0.0.1:4780. */
  readonly address: string;
}

export type LabelsMade =
  | { readonly ok: true; readonly labels: readonly Label[] }
  | { readonly ok: false; readonly code: 'no-such-item' | 'no-such-bag'; readonly name: string };

/** A label for each item and bag that is wanted, items first: its code opens it in the browser of whoever scans it. */
export function labelsOf(state: Readonly<BenchState>, modelOf: (id: string) => Model | null, wanted: WantedLabels): LabelsMade {
  const labels: Label[] = [];
  for (const name of wanted.items === 'all' ? atHand(state) : wanted.items) {
    const item = findItem(state, name);
    if (!item) return { ok: false, code: 'no-such-item', name };
    labels.push(itemLabel(item, modelOf(item.modelId), wanted.address));
  }
  for (const id of wanted.bags === 'all' ? fullBags(state) : wanted.bags) {
    const bag = state.bags.get(id);
    if (!bag) return { ok: false, code: 'no-such-bag', name: id };
    labels.push(bagLabel(bag, wanted.address));
  }
  return { ok: true, labels };
}

/** Units in the order of their numbers, and assemblies that lie by themselves. */
const atHand = ({ items }: Readonly<BenchState>): string[] =>
  [...items.values()]
    .filter((item) => !isGone(item) && item.inside === null)
    .sort((a, b) => a.number - b.number)
    .map(({ id }) => id);

const fullBags = ({ bags }: Readonly<BenchState>): string[] => [...bags.values()].filter(({ count }) => count > 0).map(({ id }) => id);

function itemLabel({ id, number, name }: Item, model: Model | null, address: string): Label {
  const type = model ? `${model.file.name} ${model.file.revision}`.trim() : '';
  return { link: `${address}/bench/${encodeURIComponent(id)}`, title: `#${number}`, lines: [name, type].filter((line) => line !== '') };
}

const bagLabel = ({ id, name, part, place }: Bag, address: string): Label => ({
  link: `${address}/drawer/bag/${encodeURIComponent(id)}`,
  title: name,
  lines: [part, place].filter((line) => line !== ''),
});
