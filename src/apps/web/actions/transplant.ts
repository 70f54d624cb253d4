import type { ItemFile } from '../../../bench/views/index.ts';
import type { Draft, Gesture } from './gesture.ts';

export interface Transplant {
  /** The unit that gets the assembly. */
  readonly unit: Pick<ItemFile, 'row' | 'slots'>;
  readonly slot: string;
  readonly slotName: string;
  /** A unit that gives it, or an assembly in the drawer. */
  readonly donor: Pick<ItemFile, 'row' | 'slots'>;
  readonly minutes: number;
  readonly newId: () => string;
}

/** What sat in the slot goes to the drawer, and the donor's assembly goes in. */
export function transplant(move: Transplant): Gesture {
  const out = takeOutDrafts({ unit: move.unit, slot: move.slot, slotName: move.slotName, minutes: 0, newId: move.newId });
  return {
    said: `${move.donor.row.kind === 'assembly' ? move.donor.row.name : `${move.slotName} from ${move.donor.row.name}`} put in`,
    drafts: [...out, moveIn(move)],
  };
}

function moveIn(move: Transplant): Draft {
  const { donor, slot } = move;
  const shared = { slot, to_item: move.unit.row.id, minutes: move.minutes };
  if (donor.row.kind === 'assembly') return { kind: 'transplant-done', body: { ...shared, assembly_id: donor.row.id, from_item: null } };
  const held = donor.slots.find((each) => each.slot === slot);
  const known = held?.item_id ?? null;
  const name = { name: assemblyName(move.slotName, donor.row.number) };
  return {
    kind: 'transplant-done',
    body: { ...shared, assembly_id: known ?? move.newId(), from_item: donor.row.id, ...(known === null ? name : {}) },
  };
}

export interface TakeOut {
  readonly unit: Pick<ItemFile, 'row' | 'slots'>;
  readonly slot: string;
  readonly slotName: string;
  readonly minutes: number;
  readonly newId: () => string;
}

/** One draft that moves what the slot holds to the drawer; none when it is empty. */
export function takeOutDrafts({ unit, slot, slotName, minutes, newId }: TakeOut): Draft[] {
  const held = unit.slots.find((each) => each.slot === slot);
  if (!held || held.holds === 'nothing') return [];
  const name = { name: assemblyName(slotName, unit.row.number) };
  const body = { assembly_id: held.item_id ?? newId(), slot, from_item: unit.row.id, to_item: null, minutes };
  return [{ kind: 'transplant-done', body: held.item_id === null ? { ...body, ...name } : body }];
}

/** "Display of #7": what an assembly is called when it first leaves its unit. */
const assemblyName = (slotName: string, number: number): string => `${slotName} of #${number}`;
