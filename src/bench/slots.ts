import type { Model } from './models/index.ts';
import type { Item } from './state.ts';

/** What a slot of a unit holds now: `itemId` is null for the unit's own assembly that was never taken out. */
export type SlotContent =
  { readonly holds: 'its-own' | 'another'; readonly itemId: string | null } | { readonly holds: 'nothing'; readonly itemId: null };

/**
 * What sits in a slot. A slot that was never touched holds what came with the unit, unless it was looked at and found
 * missing: at the slot itself, or at every block of its assembly.
 */
export function slotContent(unit: Item, slot: string, items: ReadonlyMap<string, Item>, model: Model | undefined): SlotContent {
  const inside = unit.slots.get(slot);
  if (inside === null) return { holds: 'nothing', itemId: null };
  if (inside !== undefined) return { holds: homeOf(items.get(inside)) === unit.id ? 'its-own' : 'another', itemId: inside };
  return cameWithout(unit, slot, model) ? { holds: 'nothing', itemId: null } : { holds: 'its-own', itemId: null };
}

/** The unit that an assembly was first taken out of; null for one that was bought by itself. */
export function homeOf(assembly: Item | undefined): string | null {
  const first = assembly?.history.find((entry) => entry.kind === 'moved');
  return first?.kind === 'moved' ? first.from : null;
}

/** The assemblies with a name of their own that sit in a unit. */
export function contentsOf(unit: Item, items: ReadonlyMap<string, Item>): Item[] {
  if (unit.slots.size === 0) return [];
  return [...unit.slots.values()].flatMap((id) => (id === null ? [] : (items.get(id) ?? [])));
}

/** What all working assemblies of a model are worth together, and the fraction of it that one slot makes; null when the model does not say. */
export function slotShare(model: Model | undefined, slot: string): number | null {
  const slots = model?.file.slots ?? [];
  const whole = slots.reduce((sum, spec) => sum + spec.value, 0);
  const spec = slots.find((candidate) => candidate.id === slot);
  return spec && whole > 0 ? spec.value / whole : null;
}

function cameWithout(unit: Item, slot: string, model: Model | undefined): boolean {
  const missing = new Set(unit.history.flatMap((entry) => (entry.kind === 'finding' && entry.sees === 'missing' ? [entry.place] : [])));
  if (missing.size === 0) return false;
  const blocks = model?.file.blocks.filter((block) => block.assembly === slot) ?? [];
  return missing.has(slot) || (blocks.length > 0 && blocks.every((block) => missing.has(block.id)));
}
