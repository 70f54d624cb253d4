import { isForeign, type AnyEvent } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import { slotShare } from '../slots.ts';
import type { BenchState } from '../state.ts';

/**
 * The event with what the log must hold to stay true when a model is edited later: the share of cost that leaves a
 * unit with an assembly that is taken out for the first time.
 */
export function completeEvent(event: AnyEvent, state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): AnyEvent {
  if (isForeign(event) || event.kind !== 'transplant-done') return event;
  const { assembly_id, from_item, slot, cost_share } = event.body;
  if (cost_share !== undefined || from_item === null || state.items.has(assembly_id)) return event;
  const share = slotShare(models.get(state.items.get(from_item)?.modelId ?? ''), slot);
  return share === null ? event : { ...event, body: { ...event.body, cost_share: share } };
}
