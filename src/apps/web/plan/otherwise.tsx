import { useState } from 'react';
import type { PlanItem } from '../../../bench/views/index.ts';
import { choose, chooseAsPlanned } from '../actions/choose-plan.ts';
import { useRegret } from '../api/queries.ts';
import { money } from '../format/money.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';

/** Another way than the planned one, with what it costs before it is taken; taken ways can be given back. */
export function Otherwise({ item, currency }: { readonly item: PlanItem; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const [at, setAt] = useState(0);
  const [reason, setReason] = useState('');
  const way = item.other_ways[at];
  const regret = useRegret(way ? { item_id: item.item_id, ...chosenBody(way) } : null);
  const costs = regret.data?.regret_minor;
  return (
    <div className="form">
      {way && (
        <form
          className="form"
          onSubmit={(event) => {
            event.preventDefault();
            const body = { item_id: item.item_id, ...chosenBody(way), reason, ...(costs === undefined ? {} : { regret_minor: costs }) };
            void record(choose(body, `${item.name}: ${way.name}`));
          }}
        >
          <Pick
            label={`Instead, for #${item.number}`}
            options={item.other_ways.map(({ name }, i) => ({ id: String(i), name }))}
            value={String(at)}
            onChange={(id) => setAt(Number(id))}
          />
          <output className="small">
            {costs === undefined ? 'Working out what it costs …' : `The whole plan would earn ${money(costs, currency)} less.`}
          </output>
          <Field label="Why, for later">
            <input value={reason} maxLength={4000} onChange={(event) => setReason(event.target.value)} />
          </Field>
          <button type="submit" disabled={busy}>
            Decide so
          </button>
        </form>
      )}
      {item.choices.length > 0 && (
        <button type="button" disabled={busy} onClick={() => void record(chooseAsPlanned(item.item_id, item.name))}>
          Do as planned again
        </button>
      )}
    </div>
  );
}

/** A way as the event and the question of regret name it. */
function chosenBody({ does, slot, remedy }: PlanItem['other_ways'][number]) {
  return does === null ? { slot: slot!, remedy } : { does };
}
