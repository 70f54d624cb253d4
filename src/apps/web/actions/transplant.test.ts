import { describe, expect, it } from 'vitest';
import type { ItemFile } from '../../../bench/views/index.ts';
import { takeOut } from './take-out.ts';
import { recordable } from './testing/recordable.ts';
import { transplant } from './transplant.ts';

type Slot = ItemFile['slots'][number];
type Home = Pick<ItemFile, 'row' | 'slots'>;

const thing = (id: string, number: number, kind: 'unit' | 'assembly', slots: Slot[]): Home => ({
  row: { id, number, kind, name: `thing ${number}` } as ItemFile['row'],
  slots,
});
const slot = (holds: Slot['holds'], itemId: string | null): Slot => ({
  slot: 'display',
  name: 'Display',
  holds,
  item_id: itemId,
  item_name: '',
});
const names = (): (() => string) => {
  let made = 0;
  return () => `part-${++made}`;
};
const move = { slot: 'display', slotName: 'Display', minutes: 15 };

describe('a transplant', () => {
  it('first empties the slot into the drawer, then moves the display of the donor in', () => {
    const unit = thing('unit-1', 1, 'unit', [slot('its-own', null)]);
    const donor = thing('unit-2', 2, 'unit', [slot('its-own', null)]);
    expect(recordable(transplant({ ...move, unit, donor, newId: names() }))).toMatchObject([
      { body: { assembly_id: 'part-1', name: 'Display of #1', from_item: 'unit-1', to_item: null, minutes: 0 } },
      { body: { assembly_id: 'part-2', name: 'Display of #2', from_item: 'unit-2', to_item: 'unit-1', minutes: 15 } },
    ]);
  });

  it('puts an assembly of the drawer into an empty slot with one event', () => {
    const unit = thing('unit-1', 1, 'unit', [slot('nothing', null)]);
    const donor = thing('part-9', 9, 'assembly', []);
    expect(recordable(transplant({ ...move, unit, donor, newId: names() }))).toMatchObject([
      { body: { assembly_id: 'part-9', from_item: null, to_item: 'unit-1', minutes: 15 } },
    ]);
  });

  it('keeps the name of an assembly that was moved before', () => {
    const unit = thing('unit-1', 1, 'unit', [slot('another', 'part-7')]);
    const donor = thing('unit-2', 2, 'unit', [slot('another', 'part-8')]);
    const events = recordable(transplant({ ...move, unit, donor, newId: names() }));
    expect(events).toMatchObject([{ body: { assembly_id: 'part-7' } }, { body: { assembly_id: 'part-8' } }]);
    expect(events.map((event) => Object.hasOwn(event.body as object, 'name'))).toEqual([false, false]);
  });
});

describe('taking out', () => {
  it('moves what the slot holds to the drawer, and nothing when it is empty', () => {
    const full = thing('unit-1', 1, 'unit', [slot('its-own', null)]);
    const empty = thing('unit-1', 1, 'unit', [slot('nothing', null)]);
    expect(recordable(takeOut({ ...move, unit: full, newId: names() }))).toMatchObject([
      { kind: 'transplant-done', body: { assembly_id: 'part-1', from_item: 'unit-1', to_item: null, minutes: 15 } },
    ]);
    expect(takeOut({ ...move, unit: empty, newId: names() }).drafts).toEqual([]);
  });
});
