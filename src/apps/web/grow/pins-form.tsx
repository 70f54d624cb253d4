import { useState } from 'react';
import type { Contradiction, PinsJoined } from '../../../core/netting/index.ts';
import type { DrawnPart } from '../board/drawn-part.ts';
import { Field } from '../ui/field.tsx';
import { pinNamed, probed, type Found } from './probing.ts';

/** A measurement that was said, and what it contradicts. */
export interface Measured {
  readonly join: PinsJoined;
  readonly against: readonly Contradiction[];
}

interface PinsFormProps {
  readonly parts: readonly DrawnPart[];
  readonly beeps: boolean;
  readonly found: Found;
  readonly onMeasured: (measured: Measured) => void;
}

/** Two pins by their names, for those who would rather type than point. */
export function PinsForm({ parts, beeps, found, onMeasured }: PinsFormProps) {
  const [texts, setTexts] = useState({ from: '', to: '' });
  const [from, to] = [pinNamed(texts.from, parts), pinNamed(texts.to, parts)];
  const missing = [texts.from, texts.to].find((text, i) => text.trim() !== '' && [from, to][i] === null);
  return (
    <form
      className="fields"
      onSubmit={(event) => {
        event.preventDefault();
        if (from === null || to === null || from === to) return;
        const said = probed({ held: from, beeps }, to, found);
        if (said.what === 'measured') onMeasured(said);
        setTexts({ ...texts, to: '' });
      }}
    >
      <Field label="From pin" hint={missing === undefined ? 'Such as U1.3' : `There is no pin ${missing.trim()} on the board.`}>
        <input
          value={texts.from}
          autoComplete="off"
          maxLength={25}
          onChange={(event) => setTexts({ ...texts, from: event.target.value })}
        />
      </Field>
      <Field label="To pin">
        <input value={texts.to} autoComplete="off" maxLength={25} onChange={(event) => setTexts({ ...texts, to: event.target.value })} />
      </Field>
      <button type="submit" className="field-button" disabled={from === null || to === null || from === to}>
        {beeps ? 'Note as joined' : 'Note as not joined'}
      </button>
    </form>
  );
}
