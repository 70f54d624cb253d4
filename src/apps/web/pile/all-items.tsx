import { useState } from 'react';
import { useBench, useItems, useModels } from '../api/queries.ts';
import { STATUS_WORDS, STATUSES } from '../format/words.ts';
import { Trouble } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import { ItemList } from './item-list.tsx';
import { useSettled } from '../ui/use-settled.ts';

const ANY = { id: '', name: 'any' };

/** Search over every item that ever was on this bench. */
export function AllItems() {
  const [typed, setTyped] = useState('');
  const [status, setStatus] = useState('');
  const [kind, setKind] = useState('');
  const [model, setModel] = useState('');
  const q = useSettled(typed.trim(), 200);
  const items = useItems({ q, status, kind, model });
  const models = useModels();
  const bench = useBench();
  const rows = items.data?.pages.flatMap((page) => page.rows) ?? [];
  return (
    <Section id="items" title="All items" aside="newest change first">
      <search className="fields filters">
        <Field label="Search" hint="Name, number, model, lot or seller">
          <input type="search" value={typed} onChange={(event) => setTyped(event.target.value)} />
        </Field>
        <Pick
          label="Status"
          options={[ANY, ...STATUSES.map((id) => ({ id, name: STATUS_WORDS[id] }))]}
          value={status}
          onChange={setStatus}
        />
        <Pick
          label="Kind"
          options={[ANY, { id: 'unit', name: 'Units' }, { id: 'assembly', name: 'Assemblies' }]}
          value={kind}
          onChange={setKind}
        />
        <Pick label="Model" options={[ANY, ...modelOptions(models.data ?? [])]} value={model} onChange={setModel} />
      </search>
      {items.isError && <Trouble error={items.error} retry={() => void items.refetch()} />}
      {items.data && rows.length === 0 && <p>Nothing fits. Take a word or a filter away.</p>}
      {rows.length > 0 && bench.data && <ItemList rows={rows} currency={bench.data.currency} />}
      {items.hasNextPage && (
        <button type="button" disabled={items.isFetchingNextPage} onClick={() => void items.fetchNextPage()}>
          More
        </button>
      )}
    </Section>
  );
}
