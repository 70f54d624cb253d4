import { useState } from 'react';
import type { ListingTextView } from '../../../bench/views/index.ts';
import { setSaleText } from '../actions/set-sale-text.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';

/** The own words that every listing is made with; each place in braces stands for what is on file of the unit. */
export function TemplateForm({ template, places }: Pick<ListingTextView, 'template' | 'places'>) {
  const { record, busy } = useRecorder();
  const [text, setText] = useState(template);
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setSaleText(text));
      }}
    >
      <Field
        label="Your words for all listings"
        hint="What was replaced and what does not pass is always said, with a place for it or without"
      >
        <textarea rows={9} value={text} required maxLength={4000} onChange={(event) => setText(event.target.value)} />
      </Field>
      <dl className="sale-places">
        {places.map(({ place, text: stands }) => (
          <div key={place}>
            <dt>
              <button type="button" onClick={() => setText(`${text}${text === '' || text.endsWith('\n') ? '' : '\n'}{${place}}`)}>
                Put in {`{${place}}`}
              </button>
            </dt>
            <dd className="small">{stands === '' ? <span className="muted">nothing on file of this unit</span> : stands}</dd>
          </div>
        ))}
      </dl>
      <button type="submit" className="main" disabled={busy || text.trim() === '' || text === template}>
        Keep these words
      </button>
    </form>
  );
}
