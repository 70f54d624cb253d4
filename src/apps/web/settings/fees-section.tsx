import { useState } from 'react';
import type { BenchView } from '../../../bench/views/index.ts';
import { setFees } from '../actions/set-fees.ts';
import { day } from '../format/when.ts';
import { money } from '../format/money.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Section } from '../ui/section.tsx';

/** What each place takes, as tables of the person's own with the day from which they hold. */
export function FeesSection({ currency, fees }: Pick<BenchView, 'currency' | 'fees'>) {
  const { record, busy } = useRecorder();
  const [place, setPlace] = useState('');
  const [fromDay, setFromDay] = useState(() => new Date().toISOString().slice(0, 10));
  const [percent, setPercent] = useState(10);
  const [upToMinor, setUpTo] = useState<number | null>(null);
  const [beyondPercent, setBeyond] = useState(2);
  const [fixedMinor, setFixed] = useState<number | null>(0);
  const [capMinor, setCap] = useState<number | null>(null);
  const beyond = upToMinor === null ? null : { upToMinor, percent: beyondPercent };
  return (
    <Section id="fees" title="Fees of each place">
      {fees.length === 0 ? (
        <p className="muted">No table yet: the usual fee above counts everywhere.</p>
      ) : (
        <ul className="plain-list">
          {fees.map((table) => (
            <li key={`${table.place} ${table.from_day}`}>
              {table.place} from {day(table.from_day)}: {bandWords(table, currency)}
            </li>
          ))}
        </ul>
      )}
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          void record(setFees({ place, fromDay, percent, beyond, fixedMinor: fixedMinor ?? 0, capMinor }));
        }}
      >
        <div className="fields">
          <Field label="Place, as you write it when listing">
            <input value={place} required maxLength={200} onChange={(event) => setPlace(event.target.value)} />
          </Field>
          <Field label="From the day">
            <input type="date" value={fromDay} required onChange={(event) => setFromDay(event.target.value)} />
          </Field>
          <NumberField label="Share of the price, per cent" value={percent} max={90} step="any" onChange={setPercent} />
          <MoneyField
            label="That share up to a price of"
            currency={currency}
            valueMinor={upToMinor}
            onChange={setUpTo}
            hint="Empty for the whole price"
          />
          {upToMinor !== null && (
            <NumberField label="Share beyond it, per cent" value={beyondPercent} max={90} step="any" onChange={setBeyond} />
          )}
          <MoneyField label="And for each sale" currency={currency} valueMinor={fixedMinor} onChange={setFixed} />
          <MoneyField label="The shares are at most" currency={currency} valueMinor={capMinor} onChange={setCap} hint="Empty for no cap" />
        </div>
        <button type="submit" disabled={busy}>
          Keep this table
        </button>
      </form>
    </Section>
  );
}

function bandWords({ bands, fixed_minor, cap_minor }: BenchView['fees'][number], currency: string): string {
  const shares = bands
    .map(({ percent, up_to_minor }) => `${percent} %${up_to_minor === null ? '' : ` up to ${money(up_to_minor, currency)}, then`}`)
    .join(' ');
  return `${shares} and ${money(fixed_minor, currency)}${cap_minor === null ? '' : `, the shares at most ${money(cap_minor, currency)}`}`;
}
