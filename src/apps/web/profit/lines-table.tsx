import type { BreakdownView } from '../../../bench/views/index.ts';
import { money, signedMoney } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

type Lines = BreakdownView['by_model'];

/** Units, profit, time and profit per hour of each name. */
export function LinesTable({ head, lines, currency }: { readonly head: string; readonly lines: Lines; readonly currency: string }) {
  return (
    <TableScroll label={`Profit by ${head.toLowerCase()}`}>
      <thead>
        <tr>
          <th scope="col">{head}</th>
          {['Units', 'Profit', 'A unit', 'Time', 'Per hour'].map((title) => (
            <th key={title} scope="col" className="num">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.id}>
            <th scope="row">{line.name}</th>
            <td className="num">{line.units}</td>
            <td className={`num ${line.profit_minor < 0 ? 'loss' : 'gain'}`}>{signedMoney(line.profit_minor, currency)}</td>
            <td className="num">{money(Math.round(line.profit_minor / line.units), currency)}</td>
            <td className="num">{duration(line.minutes)}</td>
            <td className="num">
              {line.profit_per_hour_minor === null ? 'no time noted' : signedMoney(line.profit_per_hour_minor, currency)}
            </td>
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
