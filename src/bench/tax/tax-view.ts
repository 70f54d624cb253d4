import { globalMargins, smallTrader, stockBook } from '../../core/books/index.ts';
import type { Body } from '../events/index.ts';
import type { BenchState } from '../state.ts';
import type { TaxView } from '../views/index.ts';
import { stockThings, type ItemThing } from './stock-things.ts';

type Rule = Body<'tax-rule-set'>;

export interface Period {
  /** Days, both counted in: "2026-01-01". */
  readonly from: string;
  readonly to: string;
}

const ASK = 'This is a reckoning, not advice: whether the rule is open to you, and with which figures, ask your tax office or accountant.';

/** What the rules that the person has chosen say of a period. Without a rule it holds the stock book without tax. */
export function taxView(state: Readonly<BenchState>, { from, to }: Period): TaxView {
  const rules = rulesOn(state.taxRules, to);
  const things = stockThings(state);
  const each = rules.get('margin-each');
  const together = rules.get('margin-together');
  const small = rules.get('small-trader');
  const rate = (each ?? together)?.rate_percent ?? 0;
  const book = stockBook(things, rate).filter((line) => line.dates.purchase <= to && (line.dates.sale === '' || line.dates.sale >= from));
  return {
    currency: state.settings.currency,
    from,
    to,
    rules: [...rules.values()],
    stock_book: book.map((line) => ({
      number: line.number,
      bought_on: line.dates.purchase,
      sold_on: line.dates.sale,
      purchase_invoice: line.invoices.purchase,
      sale_invoice: line.invoices.sale,
      seller: line.names.seller,
      buyer: line.names.buyer,
      description: line.description,
      purchase_minor: line.purchaseMinor,
      sale_minor: typeof line.saleMinor === 'number' ? line.saleMinor : null,
      disposal: typeof line.saleMinor === 'string' ? line.saleMinor : '',
      margin_minor: line.marginMinor,
      tax_minor: each ? line.taxMinor : null,
    })),
    each: each
      ? { tax_minor: book.reduce((sum, line) => sum + (isIn(line.dates.sale, { from, to }) ? (line.taxMinor ?? 0) : 0), 0) }
      : null,
    together: together ? togetherOf(things, together, { from, to }) : null,
    small_trader: small ? smallOf(state, small, { from, to }) : null,
    why: [
      'A purchase is what was paid to the seller for the thing alone; postage, import tax, parts and work are in the books and not in the margin.',
      'A sale counts with the postage that was charged.',
      ASK,
    ],
  };
}

/** The latest setting of each rule by that day, where it says on. */
function rulesOn(settings: readonly Rule[], day: string): ReadonlyMap<Rule['rule'], Rule> {
  const latest = new Map<Rule['rule'], Rule>();
  for (const rule of settings)
    if (rule.from_day <= day && rule.from_day >= (latest.get(rule.rule)?.from_day ?? '')) latest.set(rule.rule, rule);
  return new Map([...latest].filter(([, rule]) => rule.on));
}

const isIn = (day: string, { from, to }: Period): boolean => day >= from && day <= to;

/** Month by month, so that more bought than sold is carried into the next. Dearer things than the limit are left out. */
function togetherOf(things: readonly ItemThing[], rule: Rule, period: Period): NonNullable<TaxView['together']> {
  const limit = rule.item_limit_minor ?? Infinity;
  const pool = things.filter(({ purchaseMinor }) => purchaseMinor <= limit);
  const months = monthsOf(period);
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
  const totals = months.map((month) => ({
    salesMinor: sum(pool.flatMap(({ left }) => (left && 'saleMinor' in left && inMonth(left.on, month, period) ? [left.saleMinor] : []))),
    purchasesMinor: sum(pool.flatMap(({ boughtOn, purchaseMinor }) => (inMonth(boughtOn, month, period) ? [purchaseMinor] : []))),
  }));
  const margins = globalMargins(totals, rule.rate_percent);
  return {
    months: months.map((month, i) => ({
      month,
      sales_minor: totals[i]!.salesMinor,
      purchases_minor: totals[i]!.purchasesMinor,
      margin_minor: margins[i]!.marginMinor,
      carried_forward_minor: margins[i]!.carriedForwardMinor,
      tax_minor: margins[i]!.taxMinor,
    })),
    tax_minor: sum(margins.map(({ taxMinor }) => taxMinor)),
    left_out: things.length - pool.length,
  };
}

const inMonth = (day: string, month: string, period: Period): boolean => day.startsWith(month) && isIn(day, period);

/** "2026-01" for each month that the period touches. */
function monthsOf({ from, to }: Period): string[] {
  const months: string[] = [];
  let [year, month] = from.split('-').map(Number) as [number, number];
  for (let text = from.slice(0, 7); text <= to.slice(0, 7);) {
    months.push(text);
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
    text = `${year}-${String(month).padStart(2, '0')}`;
  }
  return months;
}

function smallOf(state: Readonly<BenchState>, rule: Rule, period: Period): NonNullable<TaxView['small_trader']> {
  const lines = state.journal.filter(({ at }) => isIn(at.slice(0, 10), period));
  const total = (accounts: readonly string[]): number =>
    lines.reduce((sum, { account, amountMinor }) => sum + (accounts.includes(account) ? amountMinor : 0), 0);
  const income = -total(['sales', 'refunds']);
  const costs = total(['fees', 'postage-out', 'cost-of-sales', 'write-off']);
  const reckoned = smallTrader(income, costs, rule.allowance_minor ?? 0);
  return {
    income_minor: income,
    costs_minor: costs,
    allowance_minor: rule.allowance_minor ?? 0,
    within: reckoned.within,
    with_allowance_minor: reckoned.withAllowanceMinor,
    with_costs_minor: reckoned.withCostsMinor,
    lower: reckoned.lower,
    left_minor: reckoned.leftMinor,
  };
}
