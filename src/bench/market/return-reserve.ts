import { roundHalfEven } from '../../core/quantity/index.ts';
import type { BenchState } from '../state.ts';
import type { BreakdownView } from '../views/index.ts';
import { daysBetween } from './day-number.ts';
import { returnChance } from './selling-of.ts';

/** So long buyers send things back. Common practice, no source; the law of the place may give them longer. */
const RETURN_DAYS = 30;

/** Money to keep back for what was sold lately and may come back: price and postage charged of each, at the chance that this bench has learned. */
export function returnReserve(state: Readonly<BenchState>): BreakdownView['returns'] {
  const units = [...state.items.values()].filter(({ kind }) => kind === 'unit');
  const sales = units.flatMap(({ sale }) => (sale ? [sale] : []));
  const returned = units.reduce((sum, { returns }) => sum + returns, 0);
  const chance = returnChance(state);
  const open = sales.filter(({ at }) => daysBetween(at, state.newestAt) <= RETURN_DAYS);
  const atStakeMinor = open.reduce((sum, { priceMinor, postageChargedMinor }) => sum + priceMinor + postageChargedMinor, 0);
  return {
    sold: sales.length + returned,
    returned,
    chance,
    days: RETURN_DAYS,
    open: open.length,
    reserve_minor: roundHalfEven(chance * atStakeMinor),
  };
}
