import { useDrawer } from '../api/queries.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { TransplantForm } from './transplant-form.tsx';
import { useUnit } from './unit-context.ts';

/** Fills an empty slot from the drawer. */
export function PutInForm({ slot }: { readonly slot: ItemFile['slots'][number] }) {
  const { file, model } = useUnit();
  const drawer = useDrawer();
  const spec = model.slots.find((each) => each.id === slot.slot);
  const fits = [file.model.id, ...(spec?.fits ?? [])];
  const donors = (drawer.data?.assemblies ?? [])
    .filter(({ row }) => row.slot === slot.slot && fits.includes(row.model_id))
    .map(({ row, works_chance }) => ({ item_id: row.id, name: `#${row.number} ${row.name}`, chance: works_chance }));
  if (drawer.data === undefined) return <p className="waiting">Looking in the drawer …</p>;
  return <TransplantForm remedy={{ donors, minutes: spec?.minutes ?? 0 }} slot={slot.slot} />;
}
