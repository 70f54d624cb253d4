import type { LotView, SellerQuestions } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

/** Every fourth point of the curve is printed. */
const EACH = 4;

/** What a lot is worth to the pile, and price against profit and risk. */
export function lotLines({ currency, curve, ...lot }: LotView): string[] {
  const money = (minor: number | null): string => (minor === null ? '' : moneyText(minor, currency));
  const { profit_minor: profit, loss_chance: loss, per_hour_minor: hour } = lot.at_asked;
  const perHour = hour === null ? '' : `, ${money(hour)} an hour`;
  return [
    `To this pile: worth ${money(lot.worth_minor)}, at most ${money(lot.ceiling_minor)} with postage and tax; ${lot.verdict} at ${money(lot.asks_minor)}`,
    `  at that price ${money(profit)} expected${perHour}, ${percent(loss)} chance of a loss, ${lot.minutes} min`,
    ...lot.why.map((line) => `  ${line}`),
    ...table(
      ['price', 'profit', 'loss', 'an hour'],
      curve
        .filter((_, i) => i % EACH === 0)
        .map((point) => [money(point.price_minor), money(point.profit_minor), percent(point.loss_chance), money(point.per_hour_minor)]),
      [0, 1, 2, 3],
    ),
  ];
}

/** What to ask the seller, and what each answer would mean. */
export const questionLines = ({ questions, why, currency }: SellerQuestions): string[] => [
  ...questions.map(
    (each) =>
      `Ask: ${each.ask} Worth ${moneyText(each.worth_minor, currency)}; the lot is worth ${moneyText(each.if_works_minor, currency)} if it works, ${moneyText(each.if_fails_minor, currency)} if not.`,
  ),
  ...why,
];
