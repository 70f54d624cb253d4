import { useState } from 'react';
import type { PlanView } from '../../../bench/views/index.ts';
import { setPlan } from '../actions/set-plan.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';

type Wishes = PlanView['wishes'];

const percentOf = (share: number): number => Math.round(share * 100);

/** Hours, money and appetite for risk of the plan, and what a lot that is bought must bring. The worth of an hour stands in the settings. */
export function WishesForm({ wishes, currency }: { readonly wishes: Wishes; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const [form, setForm] = useState(wishes);
  const change = (part: Partial<Wishes>): void => setForm((now) => ({ ...now, ...part }));
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setPlan(form));
      }}
    >
      <div className="fields">
        <NumberField
          label="Hours a week"
          value={form.hours_a_week}
          max={168}
          step="any"
          onChange={(hours_a_week) => change({ hours_a_week })}
        />
        <NumberField label="Planned for, weeks" value={form.weeks} min={1} max={52} onChange={(weeks) => change({ weeks })} />
        <MoneyField
          label="Most to spend on parts"
          currency={currency}
          valueMinor={form.money_minor}
          onChange={(minor) => minor !== null && change({ money_minor: minor })}
        />
        <NumberField
          label="Weight on the worst tenth, %"
          value={percentOf(form.risk_share)}
          max={100}
          hint="0 counts the mean alone, 100 the mean of the worst tenth alone"
          onChange={(percent) => change({ risk_share: percent / 100 })}
        />
        <MoneyField
          label="A day of waiting for an order costs"
          currency={currency}
          valueMinor={form.day_minor}
          onChange={(minor) => minor !== null && change({ day_minor: minor })}
        />
        <NumberField
          label="No orders that take longer than, days"
          value={form.within_days}
          min={1}
          max={365}
          onChange={(within_days) => change({ within_days })}
        />
        <MoneyField
          label="An hour at a lot must bring"
          currency={currency}
          valueMinor={form.lot_per_hour_minor}
          onChange={(minor) => minor !== null && change({ lot_per_hour_minor: minor })}
        />
        <NumberField
          label="Chance of a loss on a lot at most, %"
          value={percentOf(form.lot_loss_chance)}
          max={100}
          onChange={(percent) => change({ lot_loss_chance: percent / 100 })}
        />
        <NumberField
          label="So many bid on a lot, you among them"
          value={form.bidders}
          min={1}
          max={100}
          onChange={(bidders) => change({ bidders })}
        />
        <NumberField
          label="The worth of a lot is judged to, ± %"
          value={percentOf(form.error_share)}
          max={100}
          onChange={(percent) => change({ error_share: percent / 100 })}
        />
      </div>
      <button type="submit" className="main" disabled={busy}>
        Plan by this
      </button>
    </form>
  );
}
