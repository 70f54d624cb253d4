import { useState } from 'react';
import type { PlanView } from '../../../bench/views/index.ts';
import { setSupplier } from '../actions/set-plan.ts';
import { money } from '../format/money.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';

interface SuppliersFormProps {
  readonly suppliers: PlanView['suppliers'];
  readonly parts: PlanView['parts'];
  readonly currency: string;
}

/** Who sells what at which price; one offer is added or changed at a time. */
export function SuppliersForm({ suppliers, parts, currency }: SuppliersFormProps) {
  return (
    <>
      {suppliers.length === 0 && (
        <p className="muted">None is on file, so parts are taken at the price of the model, or as they cost in your orders.</p>
      )}
      <ul className="plain-list">
        {suppliers.map((supplier) => (
          <SupplierLine key={supplier.name} supplier={supplier} currency={currency} />
        ))}
      </ul>
      {parts.length > 0 && <OfferForm suppliers={suppliers} parts={parts} currency={currency} />}
    </>
  );
}

function SupplierLine({ supplier, currency }: { readonly supplier: PlanView['suppliers'][number]; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const { name, postage_minor: postage, days, offers } = supplier;
  return (
    <li>
      <div className="row-apart">
        <span>
          <b>{name}</b>: postage {money(postage, currency)}, {counted(days, 'day')}
        </span>
        <button type="button" disabled={busy} onClick={() => void record(setSupplier({ supplier: name, days, currency, offers: [] }))}>
          Forget {name}
        </button>
      </div>
      <p className="small muted">
        {offers
          .map((offer) => `${offer.name} ${money(offer.unit_minor, currency)}${offer.least > 1 ? ` from ${offer.least}` : ''}`)
          .join(', ')}
      </p>
    </li>
  );
}

function OfferForm({ suppliers, parts, currency }: SuppliersFormProps) {
  const { record, busy } = useRecorder();
  const [supplier, setName] = useState('');
  const [postageMinor, setPostage] = useState<number | null>(0);
  const [days, setDays] = useState(5);
  const [part, setPart] = useState(parts[0]!.id);
  const [unitMinor, setUnit] = useState<number | null>(null);
  const [least, setLeast] = useState(1);
  const known = suppliers.find(({ name }) => name === supplier.trim());
  const save = (): void => {
    if (unitMinor === null) return;
    const others = (known?.offers ?? [])
      .filter((offer) => offer.part !== part)
      .map(({ part: id, unit_minor, least: most }) => ({ part: id, unit_minor, least: most }));
    const offers = [...others, { part, unit_minor: unitMinor, least }];
    void record(setSupplier({ supplier: supplier.trim(), postage_minor: postageMinor ?? 0, days, currency, offers }));
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <div className="fields">
        <Field label="Supplier" hint={known ? 'On file: this offer is added to its others' : undefined}>
          <input value={supplier} required maxLength={200} onChange={(event) => setName(event.target.value)} />
        </Field>
        <MoneyField label="Postage of an order" currency={currency} valueMinor={postageMinor} onChange={setPostage} />
        <NumberField label="Days until it comes" value={days} max={365} onChange={setDays} />
        <Pick label="Sells" options={parts} value={part} onChange={setPart} />
        <MoneyField label="At, each" currency={currency} valueMinor={unitMinor} onChange={setUnit} required />
        <NumberField label="Fewest at once" value={least} min={1} max={1000} onChange={setLeast} />
      </div>
      <button type="submit" disabled={busy}>
        Keep this offer
      </button>
    </form>
  );
}
