import { shareOfCost } from '../../core/books/index.ts';
import { costOf, isGone } from '../books/carried.ts';
import type { EventOf } from '../events/index.ts';
import { contentsOf, slotContent, slotShare } from '../slots.ts';
import type { Item } from '../state.ts';
import { newItem } from './empty-state.ts';
import type { Apply, Fold, Missing } from './fold.ts';
import { missing, touch } from './fold.ts';
import { broughtBy, passCost } from './pass-cost.ts';
import { undoProof } from './work.ts';

type Transplant = EventOf<'transplant-done'>;

/**
 * An assembly moves: out of the unit that it is in, if any, and into another or the drawer. One that was never out
 * before becomes an item here. Its cost moves with it both ways, and both homes remember it.
 */
export const transplantDone: Apply<'transplant-done'> = (fold, event) => {
  const { state } = fold;
  const { body } = event;
  const known = state.items.get(body.assembly_id);
  const from = known ? (state.items.get(known.inside ?? '') ?? null) : homeNamed(fold, body.from_item);
  const to = homeNamed(fold, body.to_item);
  const lack = lacking(fold, event, known, from, to);
  if (lack) return lack;
  const assembly = known ?? firstTimeOut(fold, event, from!);
  if (from) takeOut(fold, event, from, assembly, known ? broughtBy(known) : ownShare(fold, event, from));
  assembly.history.push({ kind: 'moved', from: from?.id ?? null, to: to?.id ?? null, eventId: event.id, at: event.at });
  if (to) putIn(fold, event, to, assembly);
  const worked = to ?? from ?? assembly;
  worked.minutes += body.minutes;
  touch(fold, assembly, event.at);
  return null;
};

const homeNamed = (fold: Fold, id: string | null): Item | null => fold.state.items.get(id ?? '') ?? null;

function lacking(fold: Fold, { body }: Transplant, known: Item | undefined, from: Item | null, to: Item | null): Missing | null {
  for (const id of [body.from_item, body.to_item]) if (id !== null && !fold.state.items.has(id)) return missing('item', id);
  if (known && known.kind !== 'assembly') return missing('assembly', known.id);
  if (known && known.slot !== body.slot) return missing(`${body.slot} called`, known.id);
  if (!known && !from) return missing('item', body.assembly_id);
  for (const item of [known, from, to]) if (item && isGone(item)) return missing('item at hand called', item.id);
  for (const home of [from, to]) if (home && home.kind !== 'unit') return missing('unit', home.id);
  if (!known && !holdsOwn(fold, from!, body.slot)) return missing(`${body.slot} of its own in`, from!.id);
  if (to?.id === from?.id) return missing('other place to go for', body.assembly_id);
  if (to && !isFree(fold, to, body.slot)) return missing(`free slot ${body.slot} in`, to.id);
  return null;
}

const holdsOwn = (fold: Fold, unit: Item, slot: string): boolean => {
  const content = slotContent(unit, slot, fold.state.items, fold.models.get(unit.modelId));
  return content.holds === 'its-own' && content.itemId === null;
};

const isFree = (fold: Fold, unit: Item, slot: string): boolean =>
  slotContent(unit, slot, fold.state.items, fold.models.get(unit.modelId)).holds === 'nothing';

function firstTimeOut({ state, models }: Fold, { body, device }: Transplant, unit: Item): Item {
  const slotName = models.get(unit.modelId)?.file.slots.find((slot) => slot.id === body.slot)?.name ?? body.slot;
  const assembly = newItem({
    id: body.assembly_id,
    number: state.numbers.get(body.assembly_id)!,
    name: body.name ?? `${slotName} of ${unit.name}`,
    kind: 'assembly',
    modelId: unit.modelId,
    lotId: unit.lotId,
    slot: body.slot,
    status: 'in-the-drawer',
    demo: device === 'demo',
  });
  assembly.receivedAt = unit.receivedAt;
  state.items.set(assembly.id, assembly);
  return assembly;
}

/**
 * The share of a unit's own cost (what was paid for it and put into it, not what others brought) that its assembly
 * takes along: the value of the slot over the values of all slots of the model. Never more than is left.
 */
function ownShare({ state, models }: Fold, { body }: Transplant, unit: Item): number {
  const share = body.cost_share ?? slotShare(models.get(unit.modelId), body.slot) ?? 0;
  const own = unit.costs.filter((part) => part.reason !== 'transplant-in' && part.reason !== 'transplant-out');
  const whole = own.reduce((sum, part) => sum + part.amountMinor, 0);
  const brought = contentsOf(unit, state.items).reduce((sum, assembly) => sum + broughtBy(assembly), 0);
  return Math.min(shareOfCost(whole, share), costOf(unit) - brought);
}

function takeOut(fold: Fold, event: Transplant, unit: Item, assembly: Item, amountMinor: number): void {
  unit.slots.set(assembly.slot, null);
  unit.history.push({ kind: 'slot', slot: assembly.slot, came: null, left: assembly.id, eventId: event.id, at: event.at });
  assembly.inside = null;
  assembly.status = 'in-the-drawer';
  passCost(fold, event, unit, assembly, amountMinor);
  undoProof(unit);
  touch(fold, unit, event.at);
}

function putIn(fold: Fold, event: Transplant, unit: Item, assembly: Item): void {
  unit.slots.set(assembly.slot, assembly.id);
  unit.history.push({ kind: 'slot', slot: assembly.slot, came: assembly.id, left: null, eventId: event.id, at: event.at });
  assembly.inside = unit.id;
  passCost(fold, event, assembly, unit, costOf(assembly));
  assembly.status = 'in-a-unit';
  assembly.asking = null;
  undoProof(unit);
  touch(fold, unit, event.at);
}
