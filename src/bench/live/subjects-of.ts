import { isForeign, type AnyEvent } from '../events/index.ts';

/** The ids of the items that an event is about. A correction is about what the event that it undoes was about. */
export function subjectsOf(event: AnyEvent, eventById: (id: string) => AnyEvent | undefined): string[] {
  if (isForeign(event)) return [];
  switch (event.kind) {
    case 'lot-bought':
      return event.body.items.map((item) => item.item_id);
    case 'transplant-done':
      return [event.body.assembly_id, event.body.from_item, event.body.to_item].filter((id) => id !== null);
    case 'correction': {
      const target = eventById(event.body.corrects);
      return target && target.id !== event.id ? subjectsOf(target, eventById) : [];
    }
    default:
      return 'item_id' in event.body && event.body.item_id !== undefined ? [event.body.item_id] : [];
  }
}
