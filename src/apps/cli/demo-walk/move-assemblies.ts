import type { ItemFile, RemedyView } from '../../../bench/views/index.ts';
import { openTo } from './open-to.ts';
import { fileOf, modelOf, note, type Workplace } from './workplace.ts';

/** Gives a unit the assembly of the best donor; what was in the slot goes to the drawer. */
export function doTransplant(place: Workplace, file: ItemFile, remedy: RemedyView): void {
  const slot = remedy.slot!;
  const donor = remedy.donors[0]!;
  const minutes = modelOf(place, file).file.slots.find((each) => each.id === slot)!.minutes;
  openTo(place, file, 'open');
  takeOut(place, file, slot, 0);
  const source = fileOf(place, donor.item_id);
  const assemblyId = source.row.kind === 'assembly' ? donor.item_id : takeOut(place, source, slot, minutes / 2)!;
  note(place, 'transplant-done', { assembly_id: assemblyId, slot, from_item: null, to_item: file.row.id, minutes });
  place.truth.putIn(file.row.id, slot, assemblyId);
  place.clock.pass(minutes);
  place.say(
    `    ${source.row.kind === 'assembly' ? donor.name : `The ${slot} of ${donor.name}`} is in; what was there lies in the drawer.`,
  );
}

/** Moves what a slot holds to the drawer; gives the name of the assembly, or null for an empty slot. */
export function takeOut(place: Workplace, file: ItemFile, slot: string, minutes: number): string | null {
  const held = file.slots.find((each) => each.slot === slot);
  if (!held || held.holds === 'nothing') return null;
  const assembly_id = held.item_id ?? `${file.row.id}.${slot}`;
  const named = held.item_id === null ? { name: `${held.name} of #${file.row.number}` } : {};
  note(place, 'transplant-done', { assembly_id, slot, from_item: file.row.id, to_item: null, minutes, ...named });
  place.truth.takeOut(file.row.id, slot, assembly_id);
  place.clock.pass(minutes);
  return assembly_id;
}

/** Takes out every assembly that is worth more than the minutes, then scraps the rest. */
export function partOut(place: Workplace, file: ItemFile): void {
  const { hourValueMinor } = place.bench.state().settings;
  openTo(place, file, 'open');
  const worth = modelOf(place, file).file.slots.filter((slot) => slot.value > (slot.minutes * hourValueMinor) / 60);
  const taken = worth.filter((slot) => takeOut(place, fileOf(place, file.row.id), slot.id, slot.minutes / 2) !== null);
  note(place, 'scrapped', { item_id: file.row.id, reason: 'parted out' });
  place.say(`    In the drawer now: ${taken.map((slot) => slot.name).join(', ') || 'nothing'}; the rest is scrapped.`);
}
