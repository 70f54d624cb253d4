import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import type { BreakdownView } from '../../../bench/views/index.ts';
import { useBooks, useBreakdown } from '../api/queries.ts';
import { money, roughMoney } from '../format/money.ts';
import { chance, counted } from '../format/number.ts';
import { MonthsTable } from '../books/months-table.tsx';
import { Answer } from '../ui/answer.tsx';
import { PairPlot } from '../ui/pair-plot.tsx';
import { Section } from '../ui/section.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { useTitle } from '../ui/use-title.ts';
import { HourBars } from './hour-bars.tsx';
import { LinesTable } from './lines-table.tsx';

const MoneyChart = lazy(() => import('../books/money-chart.tsx'));

/** Profit and hours by model, seller and remedy, over time, and where the estimates of purchases were wrong. */
export default function ProfitPage() {
  const [breakdown, books] = [useBreakdown(), useBooks()];
  useTitle('Where the profit comes from');
  return (
    <>
      <h1>Where the profit comes from</h1>
      <p>
        <Link href="/books">Back to the books</Link>
      </p>
      {books.data && books.data.months.length > 0 && (
        <Section id="over-time" title="Money over time">
          <Suspense fallback={<p className="waiting">Drawing …</p>}>
            <MoneyChart months={books.data.months} currency={books.data.currency} />
          </Suspense>
          <MonthsTable months={books.data.months} currency={books.data.currency} />
        </Section>
      )}
      <Answer query={breakdown}>{(view) => <Breakdown view={view} />}</Answer>
    </>
  );
}

function Breakdown({ view }: { readonly view: BreakdownView }) {
  const { currency } = view;
  if (view.by_model.length === 0) return <p className="muted">No unit was sold or scrapped yet.</p>;
  return (
    <>
      <Section id="by-model" title="By model">
        <HourBars lines={view.by_model} currency={currency} />
        <LinesTable head="Model" lines={view.by_model} currency={currency} />
      </Section>
      <Section id="by-seller" title="By seller">
        <LinesTable head="Seller" lines={view.by_seller} currency={currency} />
      </Section>
      <Section id="by-remedy" title="By remedy">
        {view.by_remedy.length === 0 ? (
          <p className="muted">No remedy was done to a unit that has left.</p>
        ) : (
          <LinesTable head="Remedy" lines={view.by_remedy} currency={currency} />
        )}
        <p className="small muted">A unit counts under each remedy that was done to it.</p>
      </Section>
      <Section id="returns" title="What may come back">
        <p>
          Keep back <strong>{money(view.returns.reserve_minor, currency)}</strong>: {counted(view.returns.open, 'unit')} sold within{' '}
          {view.returns.days} days, and one in {Math.round(1 / view.returns.chance)} comes back ({chance(view.returns.chance)}).
        </p>
        <p className="small muted">
          {view.returns.returned} of {view.returns.sold} sold came back so far. How long a buyer may send things back depends on where you
          sell and on the law of the place.
        </p>
      </Section>
      {view.estimates.length > 0 && <Estimates estimates={view.estimates} currency={currency} />}
    </>
  );
}

function Estimates({ estimates, currency }: Pick<BreakdownView, 'estimates' | 'currency'>) {
  const sum = (of: 'expected_minor' | 'sold_minor'): number => estimates.reduce((all, each) => all + each[of], 0);
  return (
    <Section id="estimates" title="What it was thought to be worth when it was bought">
      <figure>
        <PairPlot
          pairs={estimates.map(({ item_id: key, expected_minor: expected, sold_minor: came }) => ({ key, expected, came }))}
          say={(minor) => roughMoney(minor, currency)}
        />
        <figcaption className="small muted">
          {counted(estimates.length, 'unit')} sold for {money(sum('sold_minor'), currency)} where {money(sum('expected_minor'), currency)}{' '}
          were thought.
        </figcaption>
      </figure>
      <TableScroll label="Thought and sold">
        <thead>
          <tr>
            <th scope="col">Unit</th>
            <th scope="col" className="num">
              Thought
            </th>
            <th scope="col" className="num">
              Sold for
            </th>
          </tr>
        </thead>
        <tbody>
          {estimates.map((each) => (
            <tr key={each.item_id}>
              <th scope="row">
                <Link href={`/bench/${encodeURIComponent(each.item_id)}`}>
                  <StockTag number={each.number} /> {each.name}
                </Link>
              </th>
              <td className="num">{money(each.expected_minor, currency)}</td>
              <td className="num">{money(each.sold_minor, currency)}</td>
            </tr>
          ))}
        </tbody>
      </TableScroll>
    </Section>
  );
}
