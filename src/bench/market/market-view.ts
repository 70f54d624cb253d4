import {
  askCurve,
  backTest,
  bestAsk,
  CONDITIONS,
  daysUntil,
  kaplanMeier,
  learnDemand,
  likelyDuplicates,
  outlyingSales,
  priceOf,
  type Offer,
} from '../../core/market/index.ts';
import { roundHalfEven } from '../../core/quantity/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { MarketView } from '../views/index.ts';
import { offersOf } from './offers-of.ts';
import { priorOf, pricesKnown } from './prices-known.ts';
import { salesOf } from './sales-of.ts';
import { sellingOf } from './selling-of.ts';

/** Fewer forecasts say nothing of how good forecasts are. */
const LEAST_TRIED = 8;

/** What is known of the market of one model: sales, prices with intervals, time to sale, and what asking more or less leads to. */
export function marketView(state: Readonly<BenchState>, model: Model): MarketView {
  const sales = salesOf(state, model);
  const fit = pricesKnown(state, model);
  const fair = priceOf(fit, { condition: 'B', complete: null, original: null });
  const offers = offersOf(state, model, fit);
  const curve = askCurve(learnDemand(offers), sellingOf(state, model, null, fair.middleMinor, lastPlace(state)));
  const tested = backTest(sales, priorOf(model), { skip: LEAST_TRIED });
  return {
    currency: state.settings.currency,
    model_id: model.file.id,
    sales: sales.map((sale) => ({
      id: sale.id,
      day: dayText(sale.day),
      price_minor: sale.priceMinor,
      condition: sale.condition,
      complete: sale.complete,
      original: sale.original,
      own: state.items.has(sale.id),
      trust: fit.trust.get(sale.id)!,
      event_id: state.sightings.get(sale.id)?.eventId ?? null,
      text: state.sightings.get(sale.id)?.text ?? state.items.get(sale.id)?.name ?? '',
    })),
    duplicates: likelyDuplicates(sales),
    outliers: outlyingSales(fit).map(({ id }) => id),
    prices: CONDITIONS.map((condition) => ({ condition, ...interval(priceOf(fit, { condition, complete: null, original: null })) })),
    spread: fit.spread,
    fresh_sales: fit.sales,
    forecasts: tested.count === 0 ? null : { count: tested.count, coverage: tested.coverage, miss: tested.miss },
    waiting: waitingOf(offers),
    asks: curve.map(({ askMinor, netMinor, medianDays, perMonthMinor }) => ({
      ask_minor: roundHalfEven(askMinor),
      net_minor: roundHalfEven(netMinor),
      median_days: medianDays,
      per_month_minor: roundHalfEven(perMonthMinor),
    })),
    best_ask_minor: roundHalfEven(bestAsk(curve).askMinor),
    why: whyOf(sales.length, fit.sales, offers),
  };
}

/** The place that something was last offered at; empty before that. */
export const lastPlace = (state: Readonly<BenchState>): string =>
  [...state.items.values()]
    .flatMap(({ offers }) => offers)
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .at(-1)?.place ?? '';

export const interval = ({ middleMinor, lowMinor, highMinor }: { middleMinor: number; lowMinor: number; highMinor: number }) => ({
  middle_minor: roundHalfEven(middleMinor),
  low_minor: roundHalfEven(lowMinor),
  high_minor: roundHalfEven(highMinor),
});

function waitingOf(offers: readonly Offer[]): MarketView['waiting'] {
  const steps = kaplanMeier(offers);
  return {
    offers: offers.length,
    sold: offers.filter(({ sold }) => sold).length,
    median_days: daysUntil(steps),
    steps: steps.map(({ days, atRisk, unsold, error }) => ({ days, at_risk: atRisk, unsold, error })),
  };
}

const dayText = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

function whyOf(count: number, fresh: number, offers: readonly Offer[]): string[] {
  const sold = offers.filter((offer) => offer.sold).length;
  return [
    count === 0
      ? "No sale is known yet: the price is the model's own typical one, with a wide interval."
      : `${count} known sales count as ${fresh.toFixed(1)} of today, for a sale counts half after each half year. Sales that stand out pull less.`,
    `Time to sale is learned from ${offers.length} own offers, ${sold} of them sold; those not sold yet count for as long as they have waited.`,
  ];
}
