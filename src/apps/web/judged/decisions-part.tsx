import { Link } from 'wouter';
import type { CalibrationView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { chance } from '../format/number.ts';
import { StockTag } from '../ui/stock-tag.tsx';

type Decisions = CalibrationView['best'];

interface DecisionsPartProps {
  readonly title: string;
  readonly none: string;
  readonly decisions: Decisions;
  readonly currency: string;
}

const ROADS: Readonly<Record<Decisions[number]['road'], string>> = {
  repair: 'to be mended',
  transplant: 'to be completed from the drawer',
  'part-out': 'to be taken apart',
  leave: 'to be sold as it came',
};

/** Units whose end differed most from what was thought when they came, each with what it teaches. */
export function DecisionsPart({ title, none, decisions, currency }: DecisionsPartProps) {
  return (
    <article>
      <h3>{title}</h3>
      {decisions.length === 0 && <p className="muted">{none}</p>}
      <ul className="plain-list">
        {decisions.map((each) => (
          <li key={each.item_id}>
            <Link href={`/bench/${encodeURIComponent(each.item_id)}`}>
              <StockTag number={each.number} /> {each.name}
            </Link>
            : {money(each.expected_minor, currency)} thought, <strong>{money(each.came_minor, currency)}</strong> came.
            <br />
            <span className="small muted">
              Taken up {ROADS[each.road]}, {chance(each.chance)} that it works in the end; it {each.worked ? 'did' : 'did not'}.
            </span>
            <br />
            {each.lesson}
          </li>
        ))}
      </ul>
    </article>
  );
}
