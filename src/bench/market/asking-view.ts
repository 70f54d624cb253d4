import { answerBid, askCurve, bestAsk, learnDemand, priceOf, priceSteps } from '../../core/market/index.ts';
import { roundHalfEven } from '../../core/quantity/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { AskingView } from '../views/index.ts';
import { interval, lastPlace } from './market-view.ts';
import { postageOf } from './postage-of.ts';
import { offersOf } from './offers-of.ts';
import { pricesKnown } from './prices-known.ts';
import { conditionOf, originalShare } from './sales-of.ts';
import { feeAt, returnChance, sellingOf } from './selling-of.ts';

const WEEKS = 26;

/** What to ask for one unit, how the ask steps down, and whether to take a bid; a bid of null asks nothing. */
export function askingView(state: Readonly<BenchState>, model: Model, item: Item, bidMinor: number | null): AskingView {
  const fit = pricesKnown(state, model);
  const condition = conditionOf(item);
  const original = originalShare(state, model, item);
  const price = priceOf(fit, { condition, complete: null, original });
  const place = item.asking?.place ?? lastPlace(state);
  const selling = sellingOf(state, model, item, price.middleMinor, place);
  const demand = learnDemand(offersOf(state, model, fit));
  const best = bestAsk(askCurve(demand, selling));
  const steps = priceSteps(demand, selling, WEEKS);
  const week = item.asking ? Math.min(WEEKS - 1, Math.floor(weeksSince(item.asking.at, state.newestAt))) : 0;
  const ask = item.asking?.priceMinor ?? roundHalfEven(best.askMinor);
  const bid = bidMinor === null ? null : answerBid(bidMinor, ask, steps[week]!.worthMinor, selling);
  return {
    currency: state.settings.currency,
    price: interval(price),
    condition,
    original,
    ask_minor: roundHalfEven(best.askMinor),
    place,
    postage_minor: postageOf(state, model),
    fee_minor: roundHalfEven(feeAt(state, place, state.newestAt, best.askMinor)),
    net_minor: roundHalfEven(best.netMinor),
    median_days: best.medianDays,
    per_month_minor: roundHalfEven(best.perMonthMinor),
    return_chance: returnChance(state),
    steps: steps.map((step) => ({ week: step.week, ask_minor: roundHalfEven(step.askMinor), worth_minor: roundHalfEven(step.worthMinor) })),
    bid: bid && {
      do: bid.do,
      reserve_minor: roundHalfEven(bid.reserveMinor),
      counter_minor: roundHalfEven(bid.counterMinor),
      gain_minor: roundHalfEven(bid.gainMinor),
    },
    why: [
      `One in condition ${condition} sells for about that; four of five lie between the two limits.`,
      `That ask earns most a month when the next unit takes its place; buyers come with a rate learned from ${Math.max(0, Math.round(demand.weight - 3))} own sales and a weak guess.`,
      'While nobody buys there are fewer buyers than thought, so the ask steps down week by week.',
    ],
  };
}

const weeksSince = (from: string, to: string): number => Math.max(0, (Date.parse(to) - Date.parse(from)) / (7 * 86_400_000));
