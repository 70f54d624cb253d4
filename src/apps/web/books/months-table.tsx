import type { BooksView } from '../../../bench/views/index.ts';
import { money, signedMoney } from '../format/money.ts';
import { monthName } from '../format/when.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

/** Month by month, the latest first. */
export function MonthsTable({ months, currency }: { readonly months: BooksView['months']; readonly currency: string }) {
  const cell = (minor: number) => <td className="num">{money(minor, currency)}</td>;
  return (
    <TableScroll label="Months">
      <thead>
        <tr>
          <th scope="col">Month</th>
          {['Bought', 'Sold', 'Fees', 'Postage', 'Cost of what was sold', 'Written off', 'Profit', 'Units sold'].map((title) => (
            <th key={title} scope="col" className="num">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {months
          .toSorted((a, b) => b.month.localeCompare(a.month))
          .map((month) => (
            <tr key={month.month}>
              <th scope="row">{monthName(month.month)}</th>
              {cell(month.bought_minor)}
              {cell(month.sold_minor)}
              {cell(month.fees_minor)}
              {cell(month.postage_minor)}
              {cell(month.cost_of_sales_minor)}
              {cell(month.write_off_minor)}
              <td className={`num ${month.profit_minor < 0 ? 'loss' : 'gain'}`}>{signedMoney(month.profit_minor, currency)}</td>
              <td className="num">{month.units_sold}</td>
            </tr>
          ))}
      </tbody>
    </TableScroll>
  );
}
