import type { OpeningView } from '../../../bench/views/index.ts';
import { Field } from '../ui/field.tsx';

const GROUPS: readonly { readonly group: OpeningView['goals'][number]['group']; readonly label: string }[] = [
  { group: 'how-far', label: 'How far' },
  { group: 'get-at', label: 'Get at' },
  { group: 'work', label: 'To do this work' },
  { group: 'part', label: 'Reach this part' },
];

/** What it is opened for. */
export function GoalPicker({ opening, onPick }: { readonly opening: OpeningView; readonly onPick: (goal: string) => void }) {
  const isListed = opening.goals.some(({ goal }) => goal === opening.goal);
  return (
    <Field label="What for">
      <select value={opening.goal} onChange={(event) => onPick(event.target.value)}>
        {!isListed && <option value={opening.goal}>For the check at hand</option>}
        {GROUPS.map(({ group, label }) => {
          const goals = opening.goals.filter((each) => each.group === group);
          return (
            goals.length > 0 && (
              <optgroup key={group} label={label}>
                {goals.map(({ goal, name }) => (
                  <option key={goal} value={goal}>
                    {name}
                  </option>
                ))}
              </optgroup>
            )
          );
        })}
      </select>
    </Field>
  );
}
