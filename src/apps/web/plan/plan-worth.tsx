import type { PlanView } from '../../../bench/views/index.ts';
import { money, moneySpread, roughMoney } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { Section } from '../ui/section.tsx';
import { Why } from '../ui/why.tsx';
import { SpreadPicture } from './spread-picture.tsx';

type Plan = NonNullable<PlanView['plan']>;

interface PlanWorthProps {
  readonly plan: Plan;
  readonly currency: string;
  readonly assumed: readonly string[];
}

const MOST_DONORS = 8;

/** What the plan earns, how sure that is, and what more hours, money or parts would add. */
export function PlanWorth({ plan, currency, assumed }: PlanWorthProps) {
  const { profit } = plan;
  return (
    <Section id="plan-worth" title="What it earns" aside={`${plan.built} units finished on average`}>
      <SpreadPicture profit={profit} currency={currency} />
      <dl className="figures">
        <Figure name="Expected" value={`${roughMoney(profit.mean_minor, currency)} ± ${roughMoney(profit.mean_error_minor, currency)}`}>
          9 times in 10 from {moneySpread(profit.low_minor, profit.high_minor, currency)}
        </Figure>
        <Figure name="The worst tenth averages" value={roughMoney(profit.worst_tenth_minor, currency)} />
        <Figure name="More than each unit on its own" value={roughMoney(profit.mean_minor - plan.alone_minor, currency)}>
          that would earn {roughMoney(plan.alone_minor, currency)}
        </Figure>
        <Figure name="More than selling all as it is" value={roughMoney(profit.mean_minor - plan.scrap_minor, currency)} />
        {plan.bound_minor !== null && <Figure name="No plan can earn more than about" value={roughMoney(plan.bound_minor, currency)} />}
        <Figure name="One hour more would add" value={money(plan.hour_minor, currency)} />
        <Figure
          name={`${money(plan.more_money.by_minor, currency)} more for parts would add`}
          value={money(plan.more_money.adds_minor, currency)}
        />
        {plan.regret_minor > 0 && <Figure name="Your decisions cost" value={money(plan.regret_minor, currency)} />}
      </dl>
      <h3>Hours</h3>
      <ul className="plain-list">
        {plan.weeks.length === 0 && <li className="muted">No work is planned.</li>}
        {plan.weeks.map(({ week, minutes }) => (
          <li key={week}>
            Week {week}: {duration(minutes)}
          </li>
        ))}
      </ul>
      {plan.donors.length > 0 && (
        <>
          <h3>What one more working one would add</h3>
          <ul className="plain-list">
            {plan.donors.slice(0, MOST_DONORS).map((donor) => (
              <li key={`${donor.model_id} ${donor.slot_name}`} className="row-apart">
                <span>
                  {donor.slot_name}, {donor.model_name}
                </span>
                <span>{money(donor.worth_minor, currency)}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <Why lines={assumed} summary="What is assumed" />
    </Section>
  );
}

function Figure({ name, value, children }: { readonly name: string; readonly value: string; readonly children?: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        {value}
        {children !== undefined && <small>{children}</small>}
      </dd>
    </div>
  );
}
