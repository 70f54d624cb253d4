import { useState } from 'react';
import { placeOrder } from '../actions/place-order.ts';
import { useModels } from '../api/queries.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { defaultModel } from '../ui/model-options.ts';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { PartPicker, partId, type PickedPart } from './part-picker.tsx';

interface OrderLine {
  readonly key: string;
  readonly part: PickedPart;
  readonly count: number;
  readonly priceMinor: number | null;
}

const emptyLine = (): OrderLine => ({ key: newId('line'), part: { modelId: '', part: '', name: '' }, count: 1, priceMinor: null });

/** Parts that were ordered: from whom, which, for how much. */
export function PlaceOrderForm({ currency }: { readonly currency: string }) {
  const models = useModels().data ?? [];
  const { record, busy } = useRecorder();
  const [supplier, setSupplier] = useState('');
  const [dueDay, setDueDay] = useState('');
  const [postageMinor, setPostageMinor] = useState<number | null>(0);
  const [lines, setLines] = useState<readonly OrderLine[]>(() => [emptyLine()]);
  const change = (key: string, part: Partial<OrderLine>): void =>
    setLines((now) => now.map((line) => (line.key === key ? { ...line, ...part } : line)));
  const place = async (): Promise<void> => {
    const wanted = lines.map(({ part, count, priceMinor }) => ({
      part: partId(part),
      name: part.name,
      count,
      priceMinor: priceMinor ?? 0,
    }));
    const order = { orderId: newId('order'), supplier, lines: wanted, postageMinor: postageMinor ?? 0, currency, dueDay: dueDay || null };
    if (await record(placeOrder(order))) setLines([emptyLine()]);
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void place();
      }}
    >
      <div className="fields">
        <Field label="Supplier">
          <input value={supplier} required maxLength={200} onChange={(event) => setSupplier(event.target.value)} />
        </Field>
        <Field label="It should come by" hint="After that day it is late">
          <input type="date" value={dueDay} onChange={(event) => setDueDay(event.target.value)} />
        </Field>
        <MoneyField label="Postage of the order" currency={currency} valueMinor={postageMinor} onChange={setPostageMinor} />
      </div>
      {lines.map((line, index) => (
        <fieldset key={line.key} className="unit-line">
          <legend>Line {index + 1}</legend>
          <div className="fields">
            <PartPicker
              models={models}
              value={{ ...line.part, modelId: line.part.modelId || defaultModel(models) }}
              onChange={(part) => change(line.key, { part })}
            />
            <NumberField label="How many" value={line.count} min={1} onChange={(typed) => change(line.key, { count: Math.round(typed) })} />
            <MoneyField
              label="Price of the line"
              currency={currency}
              valueMinor={line.priceMinor}
              onChange={(priceMinor) => change(line.key, { priceMinor })}
              required
            />
          </div>
        </fieldset>
      ))}
      <div className="row">
        <button type="button" onClick={() => setLines([...lines, emptyLine()])}>
          Another line
        </button>
        <button type="submit" className="main" disabled={busy}>
          It is ordered
        </button>
      </div>
    </form>
  );
}
