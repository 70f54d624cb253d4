import { Link } from 'wouter';
import type { ItemRow } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { day } from '../format/when.ts';
import { StatusMark } from '../ui/status-mark.tsx';
import { StockTag } from '../ui/stock-tag.tsx';

/** Items, one a line. */
export function ItemList({ rows, currency }: { readonly rows: readonly ItemRow[]; readonly currency: string }) {
  return (
    <ul className="items">
      {rows.map((row) => (
        <li key={row.id}>
          <Link href={`/bench/${encodeURIComponent(row.id)}`} className="item">
            <StockTag number={row.number} />
            <span className="item-name">{row.name}</span>
            <StatusMark status={row.status} />
            <span className="item-lot small muted">{row.lot_title}</span>
            <span className="item-cost">{money(row.cost_minor, currency)}</span>
            <span className="item-day small muted">{day(row.changed_at)}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
