import { Section } from '../ui/section.tsx';
import { SlotList } from './slot-list.tsx';
import { useUnit } from './unit-context.ts';

/** What the unit holds, slot by slot. */
export function SlotsSection() {
  const { file } = useUnit();
  if (file.slots.length === 0) return null;
  return (
    <Section id="slots" title="What it holds">
      <SlotList />
    </Section>
  );
}
