import { useBench, useMarket } from '../api/queries.ts';
import { duration } from '../format/days.ts';
import { chance, counted } from '../format/number.ts';
import { Answer } from '../ui/answer.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { Why } from '../ui/why.tsx';
import { AskTable } from './ask-table.tsx';
import { PriceScatter } from './price-scatter.tsx';
import { PricesTable } from './prices-table.tsx';
import { SaleForm } from './sale-form.tsx';
import { SalesPaste } from './sales-paste.tsx';
import { SalesTable } from './sales-table.tsx';
import type { MarketView } from '../../../bench/views/index.ts';

/** What one of a model is worth, how soon it sells, and the sales that say so. */
export function ModelMarket({ modelId }: { readonly modelId: string }) {
  const market = useMarket(modelId);
  const bench = useBench();
  return (
    <Section id="market" title="Market">
      <Answer query={market}>
        {(view) => (
          <>
            <PricesTable prices={view.prices} currency={view.currency} />
            <p className="small muted">
              {forecastWords(view)} {waitingWords(view)}
            </p>
            <Why lines={view.why} />
            <PriceScatter sales={view.sales} outliers={view.outliers} currency={view.currency} />
            <Fold title="What to ask">
              <AskTable asks={view.asks} best_ask_minor={view.best_ask_minor} currency={view.currency} />
            </Fold>
            {view.sales.length > 0 && (
              <Fold title={counted(view.sales.length, 'known sale')}>
                <SalesTable sales={view.sales} duplicates={view.duplicates} outliers={view.outliers} currency={view.currency} />
              </Fold>
            )}
          </>
        )}
      </Answer>
      {bench.data !== undefined && (
        <>
          <Fold title="Add a sale that you saw">
            <SaleForm modelId={modelId} currency={bench.data.currency} />
          </Fold>
          <Fold title="Add a table of sales">
            <SalesPaste modelId={modelId} currency={bench.data.currency} />
          </Fold>
        </>
      )}
    </Section>
  );
}

function forecastWords({ forecasts }: MarketView): string {
  if (!forecasts) return 'Too few sales yet to say how good these limits are.';
  const inside = chance(forecasts.coverage);
  return `Of the last ${counted(forecasts.count, 'sale')}, ${inside} fell within the limits of four in five that earlier sales gave.`;
}

function waitingWords({ waiting }: MarketView): string {
  if (waiting.offers === 0) return 'Nothing was offered from this bench yet.';
  const half = waiting.median_days === null ? 'fewer than half are sold yet' : `half sold within ${duration(waiting.median_days)}`;
  return `${counted(waiting.offers, 'own offer')}, ${waiting.sold} sold: ${half}.`;
}
