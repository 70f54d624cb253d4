import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import { useBooks } from '../api/queries.ts';
import { money } from '../format/money.ts';
import { Answer } from '../ui/answer.tsx';
import { LearnedSection } from '../learned/learned-section.tsx';
import { TaxSection } from '../tax/tax-section.tsx';
import { Section } from '../ui/section.tsx';
import { useTitle } from '../ui/use-title.ts';
import { MonthsTable } from './months-table.tsx';
import { UnitsTable } from './units-table.tsx';

const MoneyChart = lazy(() => import('./money-chart.tsx'));

/** Where the money and the hours went. */
export default function BooksPage() {
  const books = useBooks();
  useTitle('Books');
  return (
    <>
      <h1>Books</h1>
      <p className="row">
        <Link className="button" href="/books/profit">
          Where the profit comes from
        </Link>
        <Link className="button" href="/books/judged">
          How good the advice was
        </Link>
      </p>
      <Answer query={books}>
        {(view) => (
          <>
            <Section
              id="stand"
              title="How it stands"
              aside={
                view.balanced ? (
                  <span className="gain">The books balance to the penny</span>
                ) : (
                  <span className="loss">The books do not balance: export the bundle and report it</span>
                )
              }
            >
              <dl className="figures">
                <Figure label="Stock at cost" amountMinor={view.stock_minor} currency={view.currency} />
                <Figure label="Parts in the drawer" amountMinor={view.parts_minor} currency={view.currency} />
                <Figure label="On order" amountMinor={view.on_order_minor} currency={view.currency} />
                <Figure label="Cash, from the first purchase on" amountMinor={view.cash_minor} currency={view.currency} />
              </dl>
            </Section>
            {view.months.length > 0 && (
              <Section id="over-time" title="Money over time">
                <Suspense fallback={<p className="waiting">Drawing …</p>}>
                  <MoneyChart months={view.months} currency={view.currency} />
                </Suspense>
                <MonthsTable months={view.months} currency={view.currency} />
              </Section>
            )}
            <UnitsTable units={view.units} currency={view.currency} />
            <LearnedSection />
            <TaxSection currency={view.currency} />
          </>
        )}
      </Answer>
    </>
  );
}

function Figure({ label, amountMinor, currency }: { readonly label: string; readonly amountMinor: number; readonly currency: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{money(amountMinor, currency)}</dd>
    </div>
  );
}
