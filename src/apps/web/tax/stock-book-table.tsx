import type { TaxView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { TableScroll } from '../ui/table-scroll.tsx';

/** The nine fields of the stock book. */
export function StockBookTable({ lines, currency }: { readonly lines: TaxView['stock_book']; readonly currency: string }) {
  const amount = (minor: number | null): string => (minor === null ? '' : money(minor, currency));
  return (
    <TableScroll label="Stock book">
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Bought, sold</th>
          <th scope="col">Invoices</th>
          <th scope="col">Seller, buyer</th>
          <th scope="col">What</th>
          {['Paid', 'Sold for', 'Margin', 'Tax'].map((title) => (
            <th key={title} scope="col" className="num">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.number}>
            <th scope="row">{line.number}</th>
            <td>{pair(line.bought_on, line.sold_on)}</td>
            <td>{pair(line.purchase_invoice, line.sale_invoice)}</td>
            <td>{pair(line.seller, line.buyer)}</td>
            <td>{line.description}</td>
            <td className="num">{amount(line.purchase_minor)}</td>
            <td className="num">{line.sale_minor === null ? line.disposal : amount(line.sale_minor)}</td>
            <td className="num">{amount(line.margin_minor)}</td>
            <td className="num">{amount(line.tax_minor)}</td>
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}

const pair = (a: string, b: string): string => [a, b].filter((each) => each !== '').join(', ');
