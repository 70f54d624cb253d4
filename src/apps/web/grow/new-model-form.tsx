import { useState } from 'react';
import { useLocation } from 'wouter';
import { modelIdFor, type NewModel } from '../../../bench/grow/new-model.ts';
import type { ModelRow } from '../../../bench/views/index.ts';
import type { ModelBundle } from '../../../bench/events/index.ts';
import { beginModel } from '../actions/begin-model.ts';
import { takeAsNewModel } from '../actions/take-model.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { defaultModel, modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';
import { BoardPhotoField } from './board-photo-field.tsx';
import { BundleFile } from './bundle-file.tsx';
import { SixQuestions, USUAL } from './six-questions.tsx';

const STARTS = [
  { value: 'answers', label: 'Six questions' },
  { value: 'copy', label: 'Another model' },
  { value: 'bundle', label: 'A bundle from someone' },
] as const;
type Start = (typeof STARTS)[number]['value'];

interface NewModelFormProps {
  readonly models: readonly ModelRow[];
  readonly currency: string;
  /** The model that is to be copied, where that was said before. */
  readonly copyOf: string | null;
}

/** Name, photos, and what it inherits. */
export function NewModelForm({ models, currency, copyOf }: NewModelFormProps) {
  const { record, busy } = useRecorder();
  const [, go] = useLocation();
  const [name, setName] = useState('');
  const [revision, setRevision] = useState('');
  const [start, setStart] = useState<Start>(copyOf === null ? 'answers' : 'copy');
  const [answers, setAnswers] = useState(USUAL);
  const [copied, setCopied] = useState(copyOf ?? defaultModel(models));
  const [photos, setPhotos] = useState<Photos>({});
  const [bundle, setBundle] = useState<ModelBundle | null>(null);
  const idFor = (words: string): string => modelIdFor(words, (taken) => models.some((model) => model.id === taken));
  const begin = async (): Promise<void> => {
    const id = idFor(name);
    const from = start === 'copy' ? { copy_of: copied } : { answers };
    if (await record(beginModel(id, { name: name.trim(), revision, currency, from, photos }))) go(`/models/${id}`);
  };
  const take = async (taken: ModelBundle): Promise<void> => {
    const id = idFor(taken.name);
    if (await record(takeAsNewModel(id, taken))) go(`/models/${id}`);
  };
  return (
    <form
      className="sheet form narrow"
      onSubmit={(event) => {
        event.preventDefault();
        if (start !== 'bundle') void begin();
        else if (bundle) void take(bundle);
      }}
    >
      <Chips legend="Begin from" options={STARTS} value={start} onChange={setStart} />
      {start === 'bundle' ? (
        <BundleFile bundle={bundle} onChange={setBundle} />
      ) : (
        <>
          <Field label="What it is called" hint="Maker and type, as it stands on the case">
            <input value={name} required maxLength={200} pattern=".*\S.*" onChange={(event) => setName(event.target.value)} />
          </Field>
          <Field label="Revision of its board" hint="As printed on the board; empty where you do not know it">
            <input value={revision} maxLength={60} onChange={(event) => setRevision(event.target.value)} />
          </Field>
          <BoardPhotos photos={photos} onChange={setPhotos} />
          {start === 'answers' ? (
            <SixQuestions answers={answers} onChange={setAnswers} />
          ) : (
            <Pick label="Model that it is most like" options={modelOptions(models)} value={copied} onChange={setCopied} />
          )}
        </>
      )}
      <button type="submit" className="main" disabled={busy || (start === 'bundle' && bundle === null)}>
        Begin this model
      </button>
    </form>
  );
}

type Photos = NewModel['photos'];

function BoardPhotos({ photos, onChange }: { readonly photos: Photos; readonly onChange: (photos: Photos) => void }) {
  return (
    <div className="row">
      <BoardPhotoField
        label="photo of the front of the board"
        photo={photos.front ?? null}
        onChange={(front) => onChange({ ...photos, front })}
      />
      <BoardPhotoField label="photo of the back" photo={photos.back ?? null} onChange={(back) => onChange({ ...photos, back })} />
    </div>
  );
}
