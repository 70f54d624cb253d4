import type { PlanView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { Section } from '../ui/section.tsx';

type Plan = NonNullable<PlanView['plan']>;

/** What to order from whom, for all units together. */
export function PlanBaskets({ plan, currency }: { readonly plan: Plan; readonly currency: string }) {
  const { baskets, fits } = plan;
  const ordered = baskets.reduce((sum, basket) => sum + basket.cost_minor, 0);
  const byTheWay = plan.spend_minor - ordered;
  return (
    <Section id="baskets" title="To order" aside={money(ordered, currency)}>
      {baskets.length === 0 && <p className="muted">The plan needs nothing that has to be ordered.</p>}
      {baskets.map((basket) => (
        <div key={basket.supplier}>
          <div className="row-apart">
            <h3>{basket.supplier}</h3>
            <b>{money(basket.cost_minor, currency)}</b>
          </div>
          <p className="small muted">
            postage {money(basket.postage_minor, currency)}, {basket.days} days
          </p>
          <ul className="plain-list">
            {basket.lines.map((line) => (
              <li key={line.part} className="row-apart">
                <span>
                  {line.count} × {line.name}
                </span>
                <span>{money(line.cost_minor, currency)}</span>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {byTheWay > 0 && <p className="small muted">Besides about {money(byTheWay, currency)} for what turns out to be needed on the way.</p>}
      {fits.map((fit) => (
        <p key={`${fit.part} ${fit.model_id} ${fit.slot_name}`} className="small">
          Fit {fit.count} × {fit.name} as {fit.slot_name.toLowerCase()} where one is missing.
        </p>
      ))}
    </Section>
  );
}
