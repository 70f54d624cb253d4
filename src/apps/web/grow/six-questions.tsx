import type { StartAnswers } from '../../../bench/events/index.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';

/** Before anything is answered: what most such devices are. */
export const USUAL: StartAnswers = { power: 'battery', cell_volts: null, display: 'plain', slot: true, sound: 'speaker', charging: false };

const POWER = [
  { value: 'battery', label: 'A battery' },
  { value: 'battery-and-charger', label: 'A battery, or its charger' },
  { value: 'mains-supply', label: 'A mains supply only' },
] as const;
const DISPLAY = [
  { value: 'none', label: 'None' },
  { value: 'plain', label: 'Without a light' },
  { value: 'lit', label: 'With a light' },
] as const;
const SOUND = [
  { value: 'none', label: 'None' },
  { value: 'speaker', label: 'A speaker' },
  { value: 'socket', label: 'Only a socket' },
] as const;
const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const;

interface SixQuestionsProps {
  readonly answers: StartAnswers;
  readonly onChange: (answers: StartAnswers) => void;
}

/** What one can see of a device from outside; the rest is inherited. */
export function SixQuestions({ answers, onChange }: SixQuestionsProps) {
  const set = (more: Partial<StartAnswers>): void => onChange({ ...answers, ...more });
  return (
    <>
      <Chips legend="What drives it" options={POWER} value={answers.power} onChange={(power) => set({ power })} />
      {answers.power !== 'mains-supply' && (
        <Field label="Voltage of its battery (V)" hint="As printed on it, all cells together; leave it empty where you do not know it">
          <input
            type="number"
            inputMode="decimal"
            min={0.5}
            max={60}
            step="any"
            value={answers.cell_volts ?? ''}
            onChange={(event) => set({ cell_volts: event.target.value === '' ? null : event.target.valueAsNumber })}
          />
        </Field>
      )}
      <Chips legend="Display" options={DISPLAY} value={answers.display} onChange={(display) => set({ display })} />
      <Chips
        legend="A slot for cartridges, tapes or cards"
        options={YES_NO}
        value={answers.slot ? 'yes' : 'no'}
        onChange={(slot) => set({ slot: slot === 'yes' })}
      />
      <Chips legend="Sound" options={SOUND} value={answers.sound} onChange={(sound) => set({ sound })} />
      <Chips
        legend="Charges its own battery"
        options={YES_NO}
        value={answers.charging ? 'yes' : 'no'}
        onChange={(charging) => set({ charging: charging === 'yes' })}
      />
    </>
  );
}
