import type { MarketView } from '../../../bench/views/index.ts';
import { duration } from '../format/days.ts';
import { money } from '../format/money.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

/** What asking less or more leads to; the row that earns most a month is marked. */
export function AskTable({ asks, best_ask_minor: best, currency }: Pick<MarketView, 'asks' | 'best_ask_minor' | 'currency'>) {
  const rows = asks.filter((ask, i) => i % 10 === 0 || ask.ask_minor === best);
  return (
    <TableScroll label="Asking prices">
      <thead>
        <tr>
          <th scope="col" className="num">
            Ask
          </th>
          <th scope="col" className="num">
            Leaves after fee, postage and returns
          </th>
          <th scope="col" className="num">
            Half are sold within
          </th>
          <th scope="col" className="num">
            Earns a month
          </th>
          <th scope="col">Remark</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((ask) => (
          <tr key={ask.ask_minor}>
            <th scope="row" className="num">
              {money(ask.ask_minor, currency)}
            </th>
            <td className="num">{money(ask.net_minor, currency)}</td>
            <td className="num">{duration(ask.median_days)}</td>
            <td className="num">{money(ask.per_month_minor, currency)}</td>
            <td>{ask.ask_minor === best && <strong>earns most a month</strong>}</td>
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
