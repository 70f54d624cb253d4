import { NumberField } from '../ui/number-field.tsx';
import { useClock } from './clock-store.ts';
import { useUnit } from './unit-context.ts';

interface MinutesFieldProps {
  readonly value: number;
  readonly onChange: (minutes: number) => void;
}

export function MinutesField({ value, onChange }: MinutesFieldProps) {
  const { file } = useUnit();
  const byClock = useClock()?.itemId === file.row.id;
  return (
    <NumberField
      label="Minutes it took"
      value={value}
      onChange={onChange}
      step="any"
      hint={byClock ? 'The clock runs: it counts them' : 'As usual for this, change it if not'}
    />
  );
}
