import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { transplant } from '../actions/transplant.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { itemQuery } from '../api/queries.ts';
import type { RemedyView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { MinutesField } from './minutes-field.tsx';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

/** Another unit or the drawer gives an assembly: choose which, do it, say that it is done. */
export function TransplantForm({ remedy, slot }: { readonly remedy: Pick<RemedyView, 'donors' | 'minutes'>; readonly slot: string }) {
  const { file } = useUnit();
  const { record, tell, busy } = useRecorder();
  const client = useQueryClient();
  const [minutes, setMinutes] = useMinutes(remedy.minutes);
  const [chosen, setChosen] = useState(remedy.donors[0]?.item_id ?? null);
  const slotName = file.slots.find((each) => each.slot === slot)?.name ?? slot;
  if (chosen === null)
    return <p>Nothing in the pile or the drawer has a {slotName.toLowerCase()} that fits. Scout for a donor, or do something else.</p>;
  const done = async (): Promise<void> => {
    try {
      const donor = await client.fetchQuery({ ...itemQuery(chosen), staleTime: 0 });
      await record(transplant({ unit: file, slot, slotName, donor, minutes, newId: () => newId('part') }));
    } catch (error) {
      tell(`Not noted: ${sentenceOf(error)}`, 'bad');
    }
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void done();
      }}
    >
      <fieldset className="chips">
        <legend>{slotName} from</legend>
        {remedy.donors.map((donor) => (
          <label key={donor.item_id} className="check-line">
            <input type="radio" name="donor" checked={donor.item_id === chosen} onChange={() => setChosen(donor.item_id)} />
            <span>
              {donor.name} <span className="muted">works: {chance(donor.chance)}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <MinutesField value={minutes} onChange={setMinutes} />
      <button type="submit" className="main" disabled={busy}>
        It is in
      </button>
    </form>
  );
}
