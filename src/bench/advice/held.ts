import type { Model } from '../models/index.ts';
import { slotContent } from '../slots.ts';
import type { Item } from '../state.ts';

/** What a unit still holds of its assemblies. */
export interface Held {
  /** The part of what all its assemblies are worth together: 1 when all are there, or when the model has no slots of any value. */
  readonly share: number;
  /** Names of the slots that hold nothing. */
  readonly lacks: readonly string[];
}

export function heldBy(unit: Item, model: Model, items: ReadonlyMap<string, Item>): Held {
  const { slots } = model.file;
  const empty = slots.filter((slot) => slotContent(unit, slot.id, items, model).holds === 'nothing');
  const worth = (some: typeof slots): number => some.reduce((sum, slot) => sum + slot.value, 0);
  const whole = worth(slots);
  return { share: whole > 0 ? (whole - worth(empty)) / whole : 1, lacks: empty.map(({ name }) => name) };
}
