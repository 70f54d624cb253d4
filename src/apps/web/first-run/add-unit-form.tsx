import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Claim } from '../../../bench/events/index.ts';
import type { BenchView, ModelRow } from '../../../bench/views/index.ts';
import { addUnit } from '../actions/add-unit.ts';
import { sellerName } from '../actions/seller-name.ts';
import { useModel } from '../api/queries.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { claimsFor } from '../ui/claims.ts';
import { ClaimsInput } from '../ui/claims-input.tsx';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { defaultModel, modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';

/** One unit, with its price and claims; leads straight to its bench. */
export function AddUnitForm({ models, bench }: { readonly models: readonly ModelRow[]; readonly bench: BenchView }) {
  const { record, busy } = useRecorder();
  const [, go] = useLocation();
  const [name, setName] = useState('');
  const [modelId, setModelId] = useState(defaultModel(models));
  const [paidMinor, setPaidMinor] = useState<number | null>(null);
  const [seller, setSeller] = useState('');
  const [claims, setClaims] = useState<readonly Claim[]>([]);
  const [here, setHere] = useState(true);
  const model = useModel(modelId);
  const add = async (paid: number, heard: readonly Claim[]): Promise<void> => {
    const itemId = newId('unit');
    const unit = { lotId: newId('lot'), itemId, name, modelId, seller: sellerName(seller), paidMinor: paid };
    if (await record(addUnit({ ...unit, currency: bench.currency, claims: heard, here }))) go(`/bench/${itemId}`);
  };
  return (
    <form
      className="sheet form narrow"
      onSubmit={(event) => {
        event.preventDefault();
        if (paidMinor !== null && model.data) void add(paidMinor, claimsFor(model.data.file, claims));
      }}
    >
      <Field label="What is it" hint="As you would call it: “red pocket player”">
        <input value={name} required maxLength={200} onChange={(event) => setName(event.target.value)} />
      </Field>
      <div className="fields">
        <Pick label="Model" options={modelOptions(models)} value={modelId} onChange={setModelId} />
        <MoneyField label="Paid, postage included" currency={bench.currency} valueMinor={paidMinor} onChange={setPaidMinor} required />
        <Field label="Seller" hint="So that Salvor learns how far to trust them">
          <input value={seller} maxLength={200} onChange={(event) => setSeller(event.target.value)} />
        </Field>
      </div>
      <Answer query={model}>
        {(page) => <ClaimsInput model={page.file} claims={claimsFor(page.file, claims)} onChange={setClaims} />}
      </Answer>
      <label className="check-line">
        <input type="checkbox" checked={here} onChange={(event) => setHere(event.target.checked)} />
        It lies in front of me
      </label>
      <button type="submit" className="main" disabled={busy || model.data === undefined}>
        Add it and show what to do first
      </button>
    </form>
  );
}
