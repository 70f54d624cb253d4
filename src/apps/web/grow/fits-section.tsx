import { useState } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { FitsSeenView } from '../../../bench/views/index.ts';
import { noteFit, type FitOutcome } from '../actions/note-fit.ts';
import { useFitsSeen, useModels } from '../api/queries.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import { useGrown } from './growth-context.ts';

/** Which assemblies of other models, and which parts, go into the slots of a model. */
export function FitsSection({ file }: { readonly file: ModelFile }) {
  const fits = useFitsSeen(file.id);
  const grown = useGrown();
  if (file.slots.length === 0) return null;
  return (
    <Section id="fits" title="What fits into it">
      <Answer query={fits}>
        {({ slots }) => (
          <dl className="fits-seen">
            {slots.map((slot) => (
              <SlotFits key={slot.slot} slot={slot} />
            ))}
          </dl>
        )}
      </Answer>
      {grown && <FitForm file={file} />}
    </Section>
  );
}

type Slot = FitsSeenView['slots'][number];

const SlotFits = ({ slot: { name, lines } }: { readonly slot: Slot }) => (
  <div>
    <dt>{name}</dt>
    {lines.length === 0 && <dd className="muted">Nothing else was tried.</dd>}
    {lines.map((line) => (
      <dd key={`${line.model_id ?? ''} ${line.name}`}>
        {line.model_id === null ? line.name : `That of the ${line.name}`}: {timesWords(line)}
      </dd>
    ))}
  </div>
);

/** How often it went in, and that the model says so. */
function timesWords({ said, fits, bent, fails }: Slot['lines'][number]): string {
  const tried = fits + bent + fails;
  const seen =
    tried === 0
      ? ''
      : `went in ${counted(fits + bent, 'time')} of ${tried}${bent > 0 ? `, ${counted(bent, 'time')} after bending or filing` : ''}`;
  return [said ? 'fits by the model' : '', seen].filter(Boolean).join('; ');
}

const OUTCOMES = [
  { value: 'fits', label: 'It fits' },
  { value: 'bent', label: 'After bending or filing' },
  { value: 'does-not-fit', label: 'It does not fit' },
] as const;
const NO_MODEL = { id: '', name: 'A part of no model' };

/** What was tried in a slot, and what came of it. */
function FitForm({ file }: { readonly file: ModelFile }) {
  const { record, busy } = useRecorder();
  const models = useModels().data ?? [];
  const [slot, setSlot] = useState(file.slots[0]!.id);
  const [model, setModel] = useState('');
  const [part, setPart] = useState('');
  const [outcome, setOutcome] = useState<FitOutcome>('fits');
  const isNamed = model !== '' || part.trim() !== '';
  const note = async (): Promise<void> => {
    const other = models.find(({ id }) => id === model);
    const what = other ? { modelId: other.id, name: other.name } : { modelId: null, name: part.trim() };
    if (await record(noteFit(file, slot, what, outcome))) setPart('');
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (isNamed) void note();
      }}
    >
      <div className="fields">
        <Pick label="Where" options={file.slots} value={slot} onChange={setSlot} />
        <Pick
          label="From"
          options={[NO_MODEL, ...modelOptions(models.filter(({ id }) => id !== file.id))]}
          value={model}
          onChange={setModel}
        />
        {model === '' && (
          <Field label="Which part" hint="As it is sold, with what tells it from others">
            <input value={part} maxLength={200} onChange={(event) => setPart(event.target.value)} />
          </Field>
        )}
      </div>
      <Chips legend="What came of it" options={OUTCOMES} value={outcome} onChange={setOutcome} />
      <button type="submit" disabled={busy || !isNamed}>
        Note what was tried
      </button>
    </form>
  );
}
