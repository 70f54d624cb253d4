import { isGone } from '../books/carried.ts';
import type { ModelFile } from '../models/index.ts';
import type { Item } from '../state.ts';
import { nearest } from './nearest.ts';
import { refuse, type Objection, type RuleCode, type RuleContext } from './rule.ts';

/** How an item is named in a sentence: "#7 Tern (tern-7)". */
export const called = (item: Item): string => `#${item.number} ${item.name} (${item.id})`;

export function itemKnown({ state }: RuleContext, id: string, field = 'body.item_id'): Objection | null {
  if (state.items.has(id)) return null;
  return refuse('unknown-item', field, `there is no item "${id}"; there are ${nearest(id, state.items.keys())}`);
}

/** The item is known and has not left for good. */
export function itemAtHand(context: RuleContext, id: string, field = 'body.item_id'): Objection | null {
  const item = context.state.items.get(id);
  if (!item) return itemKnown(context, id, field);
  if (!isGone(item)) return null;
  const mend = item.status === 'sold' ? 'record its return first, or undo the sale' : 'undo the scrapping first if it is still here';
  return refuse('item-gone', field, `${called(item)} is ${item.status}; ${mend}`);
}

type Section = 'functions' | 'accessories' | 'points' | 'remedies' | 'slots' | 'steps' | 'fasteners';
const CODES: Readonly<Record<Section, readonly [RuleCode, string]>> = {
  functions: ['unknown-function', 'function'],
  accessories: ['unknown-accessory', 'accessory'],
  points: ['unknown-point', 'point'],
  remedies: ['unknown-remedy', 'remedy'],
  slots: ['unknown-slot', 'slot'],
  steps: ['unknown-step', 'step of opening'],
  fasteners: ['unknown-fasteners', 'set of fasteners'],
};

/** The name stands in that section of the model. A model that is no longer there cannot object. */
export function inModel({ models }: RuleContext, modelId: string, section: Section, name: string, field: string): Objection | null {
  const file: ModelFile | undefined = models.get(modelId)?.file;
  const names = file?.[section].map((entry) => entry.id);
  if (!file || !names || names.includes(name)) return null;
  const [code, word] = CODES[section];
  return refuse(code, field, `${file.name} has no ${word} "${name}"; it has ${nearest(name, names)}`);
}

/** The same, for the model of an item that is known. */
export function inModelOf(context: RuleContext, itemId: string, section: Section, name: string, field: string): Objection | null {
  const item = context.state.items.get(itemId);
  return item ? inModel(context, item.modelId, section, name, field) : null;
}

export function modelKnown({ models }: RuleContext, id: string, field: string): Objection | null {
  if (models.has(id)) return null;
  return refuse('unknown-model', field, `there is no model "${id}"; there are ${nearest(id, models.keys())}`);
}
