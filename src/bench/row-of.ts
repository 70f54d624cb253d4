import { costOf } from './books/carried.ts';
import type { BenchState, Item } from './state.ts';
import type { ItemRow } from './views/index.ts';

/** The line of an item in lists, as the state has it now. `place` is the id of the unit that it sits in. */
export function rowOf(state: Readonly<BenchState>, item: Item): ItemRow {
  const lot = state.lots.get(item.lotId ?? '');
  return {
    id: item.id,
    number: item.number,
    name: item.name,
    kind: item.kind,
    model_id: item.modelId,
    status: item.status,
    lot_id: item.lotId,
    lot_title: lot?.title ?? '',
    seller: lot?.seller ?? '',
    place: item.inside ?? '',
    slot: item.slot,
    cost_minor: costOf(item),
    grade: item.grade?.grade ?? '',
    changed_at: item.changedAt,
    changed_seq: item.changedSeq,
  };
}
