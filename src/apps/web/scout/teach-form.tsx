import { useState } from 'react';
import type { Claim, Outcome } from '../../../bench/events/index.ts';
import type { ReadableModel, TaughtWords } from '../../../bench/scout/index.ts';
import { teachWords } from '../actions/teach-words.ts';
import { OUTCOME_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { claimWords } from './claim-words.ts';

const OUTCOMES = (Object.keys(OUTCOME_WORDS) as readonly Outcome[]).map((id) => ({ id, name: OUTCOME_WORDS[id] }));

/** Own words for listings, and those that were taught before. */
export function TeachForm({ model, taught }: { readonly model: ReadableModel; readonly taught: readonly TaughtWords[] }) {
  const { record, busy } = useRecorder();
  const [words, setWords] = useState('');
  const [about, setAbout] = useState(model.functions[0]?.id ?? '');
  const [says, setSays] = useState<string>('fails');
  const teach = async (): Promise<void> => {
    const claim: Claim = { about: 'function', function: about, says: says as Outcome };
    if (await record(teachWords(words.trim(), claim))) setWords('');
  };
  return (
    <>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          void teach();
        }}
      >
        <div className="fields">
          <Field label="These words" hint="As sellers write them">
            <input value={words} required maxLength={200} onChange={(event) => setWords(event.target.value)} />
          </Field>
          <Pick label="say of" options={model.functions} value={about} onChange={setAbout} />
          <Pick label="that it" options={OUTCOMES} value={says} onChange={setSays} />
        </div>
        <button type="submit" disabled={busy || !/[\p{L}\p{N}]/u.test(words)}>
          Teach it
        </button>
      </form>
      <ul className="row plain-row">
        {taught.map((each) => (
          <li key={each.words}>
            <button type="button" disabled={busy} onClick={() => void record(teachWords(each.words, null))}>
              Forget “{each.words}” ({claimWords(model, each.claim).toLowerCase()})
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
