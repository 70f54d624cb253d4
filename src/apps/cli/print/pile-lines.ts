import type { PileView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { percent, table } from './table.ts';

/** The pile and what to do with each, best first. */
export function pileLines(pile: PileView): string[] {
  if (pile.plan.length === 0) return ['The pile is empty. salvor scout weighs a listing; salvor add lot notes what was bought.'];
  const rows = pile.plan.map((line) => [
    `${line.row.number}`,
    line.row.name,
    line.road,
    moneyText(line.value_minor, pile.currency),
    percent(line.chance),
    `${Math.round(line.minutes)}`,
    line.headline,
  ]);
  return [
    ...table(['no', 'name', 'road', 'worth', 'works', 'min', 'next'], rows, [0, 3, 4, 5]),
    `Together ${moneyText(pile.value_minor, pile.currency)} in ${Math.round(pile.minutes)} minutes. salvor next ITEM says why.`,
  ];
}
