import type { ModelFile } from '../models/index.ts';

/** Everything of a device that is in none of its slots, as a slot of its own. */
export const REST = 'rest';
/** Finding the trouble before anything is tried, among the remedies of a slot. */
export const FIND_FIRST = 'find-first';

/** A place of a unit that the plan deals with by itself. */
export interface PlanSlot {
  readonly id: string;
  readonly name: string;
  readonly blocks: readonly string[];
  /** What a working one is worth alone, and what it takes to change it. */
  readonly valueMinor: number;
  readonly minutes: number;
  readonly original: boolean;
}

/** The slots of a model, and the rest of it where blocks sit in none; what known-good accessories stand in for does not belong to it. */
export function planSlots({ slots, blocks, accessories }: ModelFile): PlanSlot[] {
  const within = (slot: string): string[] => blocks.filter(({ assembly }) => assembly === slot).map(({ id }) => id);
  const named = slots.map((slot) => ({
    id: slot.id,
    name: slot.name,
    blocks: within(slot.id),
    valueMinor: slot.value,
    minutes: slot.minutes,
    original: slot.original_matters,
  }));
  const loose = new Set(accessories.map(({ block }) => block));
  const rest = blocks.filter(({ id, assembly }) => assembly === undefined && !loose.has(id)).map(({ id }) => id);
  const left = { id: REST, name: 'The rest of it', blocks: rest, valueMinor: 0, minutes: 0, original: false };
  return rest.length > 0 ? [...named, left] : named;
}
