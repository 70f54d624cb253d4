import { formatMinor } from '../../core/quantity/index.ts';
import { MOST_MINOR, toBench } from '../books/to-bench.ts';
import type { EventOf } from '../events/index.ts';
import { refuse, type Objection, type RuleContext } from './rule.ts';

/** The rate fits the currency, and the amount can be reckoned in the bench's currency. */
export function moneySound({ state }: RuleContext, body: { currency: string; rate: number }, amountMinor: number): Objection | null {
  const own = state.settings.currency;
  if (body.currency === own && body.rate !== 1) {
    return refuse('rate-not-one', 'body.rate', `the books are kept in ${own}, so the rate of ${own} is 1, not ${body.rate}`);
  }
  if (body.currency !== own && body.rate === 1) {
    return refuse('rate-missing', 'body.rate', `the books are kept in ${own}: say how many ${own} one ${body.currency} was worth`);
  }
  if (toBench(amountMinor, body, own) !== null) return null;
  return refuse('amount-too-large', 'body.price_minor', `the books take amounts up to ${formatMinor(MOST_MINOR, own)} ${own}`);
}

/** The currency of the books stays once money was booked in it. */
export function benchSet({ state }: RuleContext, { body }: EventOf<'bench-set'>): Objection | null {
  if (body.currency === undefined || body.currency === state.settings.currency || state.journal.length === 0) return null;
  const own = state.settings.currency;
  return refuse('currency-fixed', 'body.currency', `money was booked in ${own} already, so the books stay in ${own}`);
}
