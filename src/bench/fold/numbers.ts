import type { AnyEvent } from '../events/index.ts';
import { isForeign } from '../events/index.ts';
import type { BenchState } from '../state.ts';

/**
 * Gives stock numbers to the items that an event names for the first time. It runs for every event of the log, undone
 * and put-away ones too, so that a number written on a sticker stays true whatever is undone later.
 */
export function giveNumbers(state: BenchState, event: AnyEvent): void {
  if (isForeign(event)) return;
  if (event.kind === 'lot-bought') for (const item of event.body.items) giveNumber(state, item.item_id);
  if (event.kind === 'transplant-done' && event.body.from_item !== null) giveNumber(state, event.body.assembly_id);
}

function giveNumber(state: BenchState, itemId: string): void {
  if (state.numbers.has(itemId)) return;
  state.numbers.set(itemId, state.nextNumber);
  state.nextNumber += 1;
}

/** The names of the things that an event makes. */
export function namesMadeBy(event: AnyEvent): string[] {
  if (isForeign(event)) return [];
  switch (event.kind) {
    case 'lot-bought':
      return [event.body.lot_id, ...event.body.items.map((item) => item.item_id)];
    case 'transplant-done':
      return event.body.from_item === null ? [] : [event.body.assembly_id];
    case 'part-bought':
      return [event.body.bag_id];
    case 'order-placed':
      return [event.body.order_id, ...event.body.lines.map((line) => line.part)];
    case 'sale-seen':
      return [event.body.sale_id];
    case 'model-begun':
      return [event.body.model_id];
    case 'listing-weighed':
      return [event.body.listing_id];
    default:
      return [];
  }
}
