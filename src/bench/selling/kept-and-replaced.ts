import { partRemedyNamed } from '../boards/part-remedies.ts';
import type { Model } from '../models/index.ts';
import { slotContent } from '../slots.ts';
import type { BenchState, Item } from '../state.ts';

interface Done {
  readonly name: string;
  readonly eventId: string;
}

/** What of a unit is its own, and what was done to it. */
export interface KeptAndReplaced {
  readonly slots: readonly { readonly name: string; readonly holds: 'its-own' | 'another' | 'nothing'; readonly itemName: string }[];
  /** Remedies that put a new part in. */
  readonly parts: readonly Done[];
  /** Remedies that stayed: those after which it was better, or that were not tried apart. */
  readonly work: readonly Done[];
}

export function keptAndReplaced(state: Readonly<BenchState>, model: Model, item: Item): KeptAndReplaced {
  const { file } = model;
  const remedies = item.history.flatMap((entry) => {
    if (entry.kind !== 'remedy') return [];
    const spec = file.remedies.find(({ id }) => id === entry.remedy) ?? partRemedyNamed(model, entry.remedy)?.spec;
    return [{ name: spec?.name ?? entry.remedy, eventId: entry.eventId, kind: spec?.kind, outcome: entry.outcome }];
  });
  return {
    slots: file.slots.map(({ id, name }) => {
      const { holds, itemId } = slotContent(item, id, state.items, model);
      return { name, holds, itemName: state.items.get(itemId ?? '')?.name ?? '' };
    }),
    parts: remedies.filter(({ kind }) => kind === 'replace'),
    work: remedies.filter(({ outcome }) => outcome !== 'made-worse'),
  };
}
