import { useState } from 'react';
import type { TaxRule } from '../../../bench/events/index.ts';
import type { TaxView } from '../../../bench/views/index.ts';
import { setTaxRule } from '../actions/set-tax-rule.ts';
import { day } from '../format/when.ts';
import { money } from '../format/money.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';

const RULES: Readonly<Record<TaxRule, string>> = {
  'margin-each': 'Margin scheme, thing by thing',
  'margin-together': 'Margin scheme, all of a period together',
  'small-trader': 'Allowance for small traders',
};

const OPTIONS = Object.entries(RULES).map(([id, name]) => ({ id, name }));

/** The rules in use, each of which can be ended, and a form to begin one. No figure is built in. */
export function TaxRuleForm({ currency, rules }: { readonly currency: string; readonly rules: TaxView['rules'] }) {
  const { record, busy } = useRecorder();
  const [rule, setRule] = useState<TaxRule>('margin-each');
  const [fromDay, setFromDay] = useState(() => new Date().toISOString().slice(0, 10));
  const [ratePercent, setRate] = useState(0);
  const [itemLimitMinor, setLimit] = useState<number | null>(null);
  const [allowanceMinor, setAllowance] = useState<number | null>(null);
  const ends = (ended: TaxView['rules'][number]) =>
    setTaxRule({ rule: ended.rule, fromDay, on: false, ratePercent: 0, itemLimitMinor: null, allowanceMinor: null });
  return (
    <>
      <ul className="plain-list">
        {rules.map((used) => (
          <li key={used.rule}>
            {RULES[used.rule]} since {day(used.from_day)}:{' '}
            {used.rule === 'small-trader' ? money(used.allowance_minor ?? 0, currency) : `${used.rate_percent} %`}{' '}
            <button type="button" className="quiet" disabled={busy} onClick={() => void record(ends(used))}>
              End it on the day below<span className="sr-only">: {RULES[used.rule]}</span>
            </button>
          </li>
        ))}
      </ul>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          void record(setTaxRule({ rule, fromDay, on: true, ratePercent, itemLimitMinor, allowanceMinor }));
        }}
      >
        <div className="fields">
          <Pick label="Rule" options={OPTIONS} value={rule} onChange={(id) => setRule(id as TaxRule)} />
          <Field label="From the day">
            <input type="date" value={fromDay} required onChange={(event) => setFromDay(event.target.value)} />
          </Field>
          {rule !== 'small-trader' && <NumberField label="Rate in per cent" value={ratePercent} max={100} step="any" onChange={setRate} />}
          {rule === 'margin-together' && (
            <MoneyField
              label="Dearer things are left out"
              currency={currency}
              valueMinor={itemLimitMinor}
              onChange={setLimit}
              hint="Empty for no limit"
            />
          )}
          {rule === 'small-trader' && (
            <MoneyField label="Allowance for a year" currency={currency} valueMinor={allowanceMinor} onChange={setAllowance} required />
          )}
        </div>
        <button type="submit" disabled={busy}>
          Use this rule
        </button>
      </form>
    </>
  );
}
