import { useState } from 'react';
import { useGrowth } from '../api/queries.ts';
import { takeNetlist } from '../actions/take-netlist.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Section } from '../ui/section.tsx';
import { TakePlacement } from './take-placement.tsx';

/** Netlist and placement of a model, in and out; in only into one that grows here. */
export function TakeCircuit({ id, hasCircuit }: { readonly id: string; readonly hasCircuit: boolean }) {
  const growth = useGrowth(id);
  const grows = (growth.data?.growth ?? null) !== null;
  if (!grows && !hasCircuit) return null;
  return (
    <Section id="circuit-files" title="Netlist and placement">
      {hasCircuit && (
        <p>
          <a href={`/api/models/${encodeURIComponent(id)}/netlist`} download={`${id}.cir`}>
            Write the netlist out as SPICE text
          </a>
        </p>
      )}
      {grows && (
        <>
          <NetlistFile id={id} />
          <TakePlacement id={id} />
        </>
      )}
    </Section>
  );
}

function NetlistFile({ id }: { readonly id: string }) {
  const { record, busy } = useRecorder();
  const [text, setText] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(takeNetlist(id, text));
      }}
    >
      <Field label="Netlist in the SPICE notation" hint="The power tree alone will do. The first line is its title.">
        <textarea rows={6} spellCheck={false} value={text} onChange={(event) => setText(event.target.value)} />
      </Field>
      <Field label="Or from a file">
        <input type="file" accept=".cir,.sp,.net,.txt" onChange={(event) => void event.target.files?.[0]?.text().then(setText)} />
      </Field>
      <button type="submit" disabled={busy || text.trim() === ''}>
        Take this netlist
      </button>
    </form>
  );
}
