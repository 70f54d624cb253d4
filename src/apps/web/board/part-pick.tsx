import { Field } from '../ui/field.tsx';
import type { DrawnPart, Hit } from './drawn-part.ts';

interface PartPickProps {
  readonly parts: readonly DrawnPart[];
  readonly chosen: Hit | null;
  readonly choose: (hit: Hit | null) => void;
}

/** The parts as a list: what pointing does, by keys. */
export function PartPick({ parts, chosen, choose }: PartPickProps) {
  const sorted = parts.toSorted((a, b) => a.ref.localeCompare(b.ref, undefined, { numeric: true }));
  const pick = (ref: string): void => {
    const part = parts.find((each) => each.ref === ref);
    choose(part ? { part, pin: null, isListed: true } : null);
  };
  return (
    <Field label="Part">
      <select value={chosen?.part.ref ?? ''} onChange={(event) => pick(event.target.value)}>
        <option value="">Point at one, or choose it here</option>
        {sorted.map(({ ref, value, side }) => (
          <option key={ref} value={ref}>
            {[ref, value, side].filter((word) => word !== '').join(', ')}
          </option>
        ))}
      </select>
    </Field>
  );
}
