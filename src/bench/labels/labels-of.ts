import type { BenchState } from '../state.ts';
import { findItem } from '../show/item-file.ts';
import type { Model } from '../models/index.ts';
import type { Label } from './layout-labels.ts';

interface Wanted {
  /** Ids or stock numbers of items. */
  readonly items: readonly string[];
  /** Ids of bags. */
  readonly bags: readonly string[];
  /** Where the bench is opened, such as http://127.0.0.1:4780. */
  readonly address: string;
}

export type LabelsMade =
  | { readonly ok: true; readonly labels: readonly Label[] }
  | { readonly ok: false; readonly code: 'no-such-item' | 'no-such-bag'; readonly name: string };

/** A label for each item and bag that is wanted, in that order: its code opens it in the browser of whoever scans it. */
export function labelsOf(state: Readonly<BenchState>, models: (id: string) => Model | null, { items, bags, address }: Wanted): LabelsMade {
  const labels: Label[] = [];
  for (const name of items) {
    const item = findItem(state, name);
    if (!item) return { ok: false, code: 'no-such-item', name };
    const model = models(item.modelId)?.file;
    labels.push({
      link: `${address}/bench/${encodeURIComponent(item.id)}`,
      title: `#${item.number}`,
      lines: [item.name, ...(model ? [[model.name, model.revision].filter((word) => word !== '').join(' ')] : [])],
    });
  }
  for (const id of bags) {
    const bag = state.bags.get(id);
    if (!bag) return { ok: false, code: 'no-such-bag', name: id };
    labels.push({ link: `${address}${bagPath(id)}`, title: bag.name, lines: [bag.part, bag.place].filter((line) => line !== '') });
  }
  return { ok: true, labels };
}

/** The page of the drawer on which a bag is open. */
export const bagPath = (id: string): string => `/drawer/bag/${encodeURIComponent(id)}`;
