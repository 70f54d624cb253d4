import type { EventOf } from '../events/index.ts';
import { slotContent } from '../slots.ts';
import type { Item } from '../state.ts';
import { called, inModelOf, itemAtHand } from './known.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

type Body = EventOf<'transplant-done'>['body'];

/** Both homes are units at hand, the assembly is where it is said to be, it fits, and the slot that it goes into is free. */
export const transplantDone: Rule<'transplant-done'> = (context, { body }) =>
  firstOf(
    () => (body.from_item === body.to_item ? refuse('nothing-moves', 'body.to_item', 'it comes from where it goes to') : null),
    () => homeSound(context, body, 'from_item'),
    () => homeSound(context, body, 'to_item'),
    () => (context.state.items.has(body.assembly_id) ? knownAssembly(context, body) : newAssembly(context, body)),
    () => fits(context, body),
    () => slotFree(context, body),
  );

function homeSound(context: RuleContext, body: Body, end: 'from_item' | 'to_item'): Objection | null {
  const id = body[end];
  if (id === null) return null;
  const away = itemAtHand(context, id, `body.${end}`);
  if (away) return away;
  const home = context.state.items.get(id)!;
  if (home.kind !== 'unit') return refuse('not-a-unit', `body.${end}`, `${called(home)} is an assembly; assemblies sit in units`);
  return inModelOf(context, id, 'slots', body.slot, 'body.slot');
}

function knownAssembly(context: RuleContext, body: Body): Objection | null {
  const away = itemAtHand(context, body.assembly_id, 'body.assembly_id');
  if (away) return away;
  const assembly = context.state.items.get(body.assembly_id)!;
  if (assembly.kind !== 'assembly') return refuse('not-an-assembly', 'body.assembly_id', `${called(assembly)} is a whole unit`);
  if (assembly.inside === body.from_item) return null;
  const home = context.state.items.get(assembly.inside ?? '');
  return refuse('not-there', 'body.from_item', `${called(assembly)} is ${home ? `in ${called(home)}` : 'in the drawer'}`);
}

function newAssembly(context: RuleContext, body: Body): Objection | null {
  if (body.from_item === null) return itemAtHand(context, body.assembly_id, 'body.assembly_id');
  if (context.state.putAway.has(body.assembly_id)) {
    return refuse('id-taken', 'body.assembly_id', `another item was called "${body.assembly_id}" already; give this one a name of its own`);
  }
  const unit = context.state.items.get(body.from_item)!;
  const content = contentOf(context, unit, body.slot);
  if (content.holds === 'nothing') return refuse('slot-empty', 'body.slot', `the ${body.slot} of ${called(unit)} is out already`);
  const inside = context.state.items.get(content.itemId ?? '');
  if (!inside) return null;
  return refuse('not-there', 'body.assembly_id', `the ${body.slot} of ${called(unit)} is ${called(inside)}; name that one`);
}

/** The same slot, of the same model or of one that the model lists as fitting. */
function fits({ state, models }: RuleContext, body: Body): Objection | null {
  const assembly = state.items.get(body.assembly_id) ?? state.items.get(body.from_item ?? '')!;
  const slot = assembly.kind === 'assembly' ? assembly.slot : body.slot;
  if (slot !== body.slot) return refuse('does-not-fit', 'body.slot', `${called(assembly)} is made for the slot "${slot}"`);
  const unit = state.items.get(body.to_item ?? '');
  const spec = models.get(unit?.modelId ?? '')?.file.slots.find((candidate) => candidate.id === slot);
  if (!unit || !spec || assembly.modelId === unit.modelId || spec.fits.includes(assembly.modelId)) return null;
  const list = [unit.modelId, ...spec.fits].join(', ');
  return refuse(
    'does-not-fit',
    'body.to_item',
    `a ${slot} of ${assembly.modelId} does not fit ${called(unit)}, which takes those of ${list}`,
  );
}

function slotFree(context: RuleContext, body: Body): Objection | null {
  const unit = context.state.items.get(body.to_item ?? '');
  if (!unit) return null;
  const content = contentOf(context, unit, body.slot);
  if (content.holds === 'nothing') return null;
  const inside = context.state.items.get(content.itemId ?? '');
  const what = inside ? called(inside) : 'its own';
  return refuse('slot-occupied', 'body.to_item', `the ${body.slot} of ${called(unit)} still holds ${what}; take that out first`);
}

const contentOf = ({ state, models }: RuleContext, unit: Item, slot: string) =>
  slotContent(unit, slot, state.items, models.get(unit.modelId));
