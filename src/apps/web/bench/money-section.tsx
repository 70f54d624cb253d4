import { money, signedMoney } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';

/** Where this unit's money and minutes went. */
export function MoneySection() {
  const view = useUnit().file.money;
  return (
    <Section id="money" title="Money">
      <dl className="figures">
        <div>
          <dt>Cost so far</dt>
          <dd>{money(view.cost_minor, view.currency)}</dd>
        </div>
        <div>
          <dt>Time</dt>
          <dd>{duration(view.minutes)}</dd>
        </div>
        <div>
          <dt>Income</dt>
          <dd>
            {money(view.income_minor, view.currency)}
            <small>fees and postage off</small>
          </dd>
        </div>
        {view.profit_minor !== null && (
          <div>
            <dt>Profit</dt>
            <dd className={view.profit_minor < 0 ? 'loss' : 'gain'}>
              {signedMoney(view.profit_minor, view.currency)}
              {view.profit_per_hour_minor !== null && <small>{signedMoney(view.profit_per_hour_minor, view.currency)} per hour</small>}
            </dd>
          </div>
        )}
      </dl>
      {view.costs.length > 0 && (
        <ul className="plain-list small">
          {view.costs.map((cost, index) => (
            <li key={`${index}-${cost.text}`} className="row-apart">
              <span>{cost.text}</span>
              <span>{money(cost.amount_minor, view.currency)}</span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
