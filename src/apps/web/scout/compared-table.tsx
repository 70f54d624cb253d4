import type { CompareView } from '../../../bench/views/index.ts';
import { comparedCsv } from '../../../bench/scout/index.ts';
import { money, roughMoney } from '../format/money.ts';
import { chance, counted, duration } from '../format/number.ts';
import { dayAndTime } from '../format/when.ts';
import { TableScroll } from '../ui/table-scroll.tsx';
import { Why } from '../ui/why.tsx';

/** Compared listings, the one that brings most an hour first, and the same as a file. */
export function ComparedTable({ view: { listings, currency, why } }: { readonly view: CompareView }) {
  const file = `data:text/csv;charset=utf-8,${encodeURIComponent(comparedCsv(listings, currency))}`;
  return (
    <>
      <TableScroll label="Listings by profit an hour">
        <thead>
          <tr>
            <th scope="col">Listing</th>
            <th scope="col" className="num">
              An hour brings
            </th>
            <th scope="col" className="num">
              Profit
            </th>
            <th scope="col" className="num">
              Asked, all costs
            </th>
            <th scope="col" className="num">
              Worth to your pile
            </th>
            <th scope="col" className="num">
              Work
            </th>
            <th scope="col">Read in its words</th>
          </tr>
        </thead>
        <tbody>
          {listings.map((each) => (
            <tr key={each.index}>
              <th scope="row">
                {each.title}
                <br />
                <small className="muted">
                  {counted(each.count, 'unit')} ·{' '}
                  {each.seller === '' ? 'seller not named' : `${each.seller}, right ${chance(each.honesty)}`}
                  {each.closes_at !== null && ` · closes ${dayAndTime(each.closes_at)}`}
                </small>
              </th>
              <td className="num">{each.per_hour_minor === null ? 'no work' : money(each.per_hour_minor, currency)}</td>
              <td className="num">{money(each.profit_minor, currency)}</td>
              <td className="num">{money(each.asks_minor, currency)}</td>
              <td className="num">{roughMoney(each.worth_minor, currency)}</td>
              <td className="num">{duration(each.minutes)}</td>
              <td>{each.claims.join(', ') || 'nothing'}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
      <Why lines={why} />
      <a className="button" href={file} download="listings-by-profit-an-hour.csv">
        Save this table as CSV
      </a>
    </>
  );
}
