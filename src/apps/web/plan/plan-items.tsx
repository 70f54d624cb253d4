import { Link } from 'wouter';
import type { PlanItem, PlanView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { LazyFold } from '../ui/lazy-fold.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { Why } from '../ui/why.tsx';
import { Otherwise } from './otherwise.tsx';

type Plan = NonNullable<PlanView['plan']>;

const DOES = { open: 'work on it', 'as-is': 'sell as it is', keep: 'left alone', loose: 'in the drawer' } as const;

/** What to do with each thing, what matters most first. */
export function PlanItems({ plan, currency }: { readonly plan: Plan; readonly currency: string }) {
  return (
    <ol className="plan">
      {plan.items.map((item) => (
        <PlanLine key={item.item_id} item={item} currency={currency} />
      ))}
    </ol>
  );
}

function PlanLine({ item, currency }: { readonly item: PlanItem; readonly currency: string }) {
  return (
    <li className="plan-line">
      <Link href={`/bench/${encodeURIComponent(item.item_id)}`} className="plan-what">
        <StockTag number={item.number} />
        <span>
          <b>{item.headline}</b>
          <span className="small muted">{item.name}</span>
        </span>
      </Link>
      <div className="plan-worth">
        <b>{endWords(item)}</b>
        {item.second && item.kind === 'unit' && (
          <span className="small muted">
            next best: {item.second.name.charAt(0).toLowerCase() + item.second.name.slice(1)}, {money(item.second.less_minor, currency)}{' '}
            less
          </span>
        )}
        {item.choices.map((choice) => (
          <span key={choice.event_id} className="small">
            you chose: {choice.said}
            {choice.regret_minor !== null && `, at ${money(choice.regret_minor, currency)} less`}
            {!choice.counts && ' (not possible any more)'}
          </span>
        ))}
      </div>
      <div className="plan-more">
        {item.treatments.length > 0 && <Treatments treatments={item.treatments} />}
        <Why lines={item.why} />
        <LazyFold title="Decide otherwise">
          <Otherwise item={item} currency={currency} />
        </LazyFold>
      </div>
    </li>
  );
}

function endWords({ does, finished_chance: finished, donor_chance: donor }: PlanItem): string {
  if (does !== 'open') return DOES[does];
  return finished >= donor ? `finished ${chance(finished)}` : `helps another ${chance(donor)}`;
}

function Treatments({ treatments }: { readonly treatments: PlanItem['treatments'] }) {
  return (
    <ul className="plain-list small">
      {treatments.map(({ slot, slot_name: name, name: work, works_now: now, works_after: after, minutes }) => (
        <li key={slot}>
          {name}: {work} — {duration(minutes)}, works {chance(now)} before, {chance(after)} after
        </li>
      ))}
    </ul>
  );
}
