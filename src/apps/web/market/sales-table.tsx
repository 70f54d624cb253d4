import type { MarketView } from '../../../bench/views/index.ts';
import { undo } from '../actions/undo.ts';
import { day } from '../format/when.ts';
import { money } from '../format/money.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

/** The sales behind a price; those written down by hand can be taken out again. */
export function SalesTable({ sales, duplicates, outliers, currency }: Pick<MarketView, 'sales' | 'duplicates' | 'outliers' | 'currency'>) {
  const { record, busy } = useRecorder();
  const twins = new Map(duplicates.map(({ id, of }) => [id, of]));
  const remark = (id: string): string =>
    twins.has(id) ? 'perhaps written down twice' : outliers.includes(id) ? 'stands out, pulls less' : '';
  return (
    <TableScroll label="Known sales">
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col" className="num">
            Price
          </th>
          <th scope="col">Condition</th>
          <th scope="col">From</th>
          <th scope="col">Remark</th>
          <th scope="col">
            <span className="sr-only">Take out</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {sales.toReversed().map((sale) => (
          <tr key={sale.id}>
            <th scope="row">{day(sale.day)}</th>
            <td className="num">{money(sale.price_minor, currency)}</td>
            <td>{sale.condition}</td>
            <td>{sale.own ? `your own ${sale.text}` : sale.text || 'seen'}</td>
            <td>{remark(sale.id)}</td>
            <td>
              {sale.event_id !== null && (
                <button type="button" className="quiet" disabled={busy} onClick={() => void record(undo([sale.event_id!]))}>
                  Take out<span className="sr-only"> the sale of {day(sale.day)}</span>
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
