import { useState } from 'react';
import { buyLot } from '../actions/buy-lot.ts';
import type { Gesture } from '../actions/gesture.ts';
import { listingDraft, type ListingAnswer } from '../actions/keep-listing.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';

interface BuyFormProps {
  readonly listing: ListingAnswer;
  /** It stands on the watch list already, under its `listingId`. */
  readonly isWeighed: boolean;
  /** What is in the lot. */
  readonly kinds: readonly { readonly modelId: string; readonly count: number; readonly name: string }[];
  /** Expected worth of the whole lot, in the bench's currency. */
  readonly valueMinor: number;
  readonly bought: () => void;
}

interface UnitLine {
  readonly itemId: string;
  readonly modelId: string;
  readonly name: string;
  readonly expectedValueMinor: number;
}

/** What was paid in the end, and the units that come of it, each with its share of the expected value. */
export function BuyForm({ listing, isWeighed, kinds, valueMinor, bought }: BuyFormProps) {
  const { record, busy } = useRecorder();
  const [priceMinor, setPriceMinor] = useState<number | null>(listing.priceMinor);
  const [postageMinor, setPostageMinor] = useState<number | null>(listing.postageMinor);
  const [taxMinor, setTaxMinor] = useState<number | null>(listing.taxMinor);
  const [units, setUnits] = useState<readonly UnitLine[]>(() => unitLines(kinds, valueMinor));
  const change = (index: number, part: Partial<UnitLine>): void =>
    setUnits((now) => now.map((unit, at) => (at === index ? { ...unit, ...part } : unit)));
  const buy = async (price: number): Promise<void> => {
    const listingId = isWeighed ? listing.listingId : newId('listing');
    const lot = { ...listing, listingId, lotId: newId('lot'), priceMinor: price, postageMinor: postageMinor ?? 0, taxMinor: taxMinor ?? 0 };
    const deal = buyLot({ ...lot, units });
    const weighed = isWeighed ? [] : [listingDraft({ ...listing, listingId })];
    const gesture: Gesture = { said: deal.said, drafts: [...weighed, ...deal.drafts] };
    if (await record(gesture)) bought();
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (priceMinor !== null) void buy(priceMinor);
      }}
    >
      <div className="fields">
        <MoneyField label="Price paid" currency={listing.currency} valueMinor={priceMinor} onChange={setPriceMinor} required />
        <MoneyField label="Postage paid" currency={listing.currency} valueMinor={postageMinor} onChange={setPostageMinor} />
        <MoneyField label="Tax and duty" currency={listing.currency} valueMinor={taxMinor} onChange={setTaxMinor} />
      </div>
      <p className="small muted">The cost is split over the units in proportion to what each is expected to be worth.</p>
      {units.map((unit, index) => (
        <fieldset key={unit.itemId} className="unit-line">
          <legend>Unit {index + 1}</legend>
          <div className="fields">
            <Field label="Name">
              <input value={unit.name} required maxLength={200} onChange={(event) => change(index, { name: event.target.value })} />
            </Field>
            <MoneyField
              label="Expected worth"
              currency={listing.currency}
              valueMinor={unit.expectedValueMinor}
              onChange={(minor) => change(index, { expectedValueMinor: minor ?? 0 })}
            />
          </div>
        </fieldset>
      ))}
      <button type="submit" className="main" disabled={busy}>
        It is bought
      </button>
    </form>
  );
}

function unitLines(kinds: BuyFormProps['kinds'], valueMinor: number): UnitLine[] {
  const all = kinds.reduce((sum, { count }) => sum + count, 0);
  const each = Math.max(0, Math.round(valueMinor / all));
  return kinds.flatMap(({ modelId, count, name }) =>
    Array.from({ length: count }, (_, index) => ({
      itemId: newId('unit'),
      modelId,
      name: count === 1 ? name : `${name}, ${index + 1} of ${count}`,
      expectedValueMinor: each,
    })),
  );
}
