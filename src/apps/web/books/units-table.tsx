import { Link } from 'wouter';
import type { BooksView } from '../../../bench/views/index.ts';
import { money, signedMoney } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { Section } from '../ui/section.tsx';
import { StatusMark } from '../ui/status-mark.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';

/** Each unit's money and minutes. */
export function UnitsTable({ units, currency }: { readonly units: BooksView['units']; readonly currency: string }) {
  return (
    <Section id="units" title="Each unit">
      {units.length === 0 ? (
        <p className="muted">No unit yet.</p>
      ) : (
        <TableScroll label="Units">
          <thead>
            <tr>
              <th scope="col">Unit</th>
              <th scope="col">Status</th>
              <th scope="col" className="num">
                Cost
              </th>
              <th scope="col" className="num">
                Income
              </th>
              <th scope="col" className="num">
                Profit
              </th>
              <th scope="col" className="num">
                Time
              </th>
              <th scope="col" className="num">
                Per hour
              </th>
            </tr>
          </thead>
          <tbody>
            {units.map((unit) => (
              <tr key={unit.row.id}>
                <th scope="row">
                  <Link href={`/bench/${encodeURIComponent(unit.row.id)}`}>
                    <StockTag number={unit.row.number} /> {unit.row.name}
                  </Link>
                </th>
                <td>
                  <StatusMark status={unit.row.status} />
                </td>
                <td className="num">{money(unit.cost_minor, currency)}</td>
                <td className="num">{money(unit.income_minor, currency)}</td>
                <ProfitCell minor={unit.profit_minor} currency={currency} />
                <td className="num">{duration(unit.minutes)}</td>
                <ProfitCell minor={unit.profit_per_hour_minor} currency={currency} />
              </tr>
            ))}
          </tbody>
        </TableScroll>
      )}
    </Section>
  );
}

function ProfitCell({ minor, currency }: { readonly minor: number | null; readonly currency: string }) {
  if (minor === null) return <td className="num muted">not yet</td>;
  return <td className={`num ${minor < 0 ? 'loss' : 'gain'}`}>{signedMoney(minor, currency)}</td>;
}
