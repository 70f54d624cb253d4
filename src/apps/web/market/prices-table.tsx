import type { MarketView } from '../../../bench/views/index.ts';
import { money, moneySpread } from '../format/money.ts';
import { TableScroll } from '../ui/table-scroll.tsx';
import { CONDITION_WORDS } from './condition-words.ts';

/** What one sells for in each condition, with the limits of four in five. */
export function PricesTable({ prices, currency }: Pick<MarketView, 'prices' | 'currency'>) {
  return (
    <TableScroll label="Prices">
      <thead>
        <tr>
          <th scope="col">Condition</th>
          <th scope="col" className="num">
            Sells for about
          </th>
          <th scope="col" className="num">
            Four in five between
          </th>
        </tr>
      </thead>
      <tbody>
        {prices.map((price) => (
          <tr key={price.condition}>
            <th scope="row">{CONDITION_WORDS[price.condition]}</th>
            <td className="num">{money(price.middle_minor, currency)}</td>
            <td className="num">{moneySpread(price.low_minor, price.high_minor, currency)}</td>
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
