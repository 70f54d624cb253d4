import { useState } from 'react';
import type { TaxView } from '../../../bench/views/index.ts';
import { useTax } from '../api/queries.ts';
import { money } from '../format/money.ts';
import { monthName } from '../format/when.ts';
import { Answer } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { Why } from '../ui/why.tsx';
import { StockBookTable } from './stock-book-table.tsx';
import { TaxRuleForm } from './tax-rule-form.tsx';

const thisYear = (): string => String(new Date().getFullYear());

/** The books of a period: stock book, the rules of tax that the person uses, and one file for whoever checks them. */
export function TaxSection({ currency }: { readonly currency: string }) {
  const [from, setFrom] = useState(() => `${thisYear()}-01-01`);
  const [to, setTo] = useState(() => `${thisYear()}-12-31`);
  const sound = from !== '' && to !== '' && from <= to;
  const tax = useTax(from, to, sound);
  return (
    <Section id="period" title="A period, for the tax office">
      <div className="fields">
        <Field label="From">
          <input type="date" value={from} onChange={(event) => setFrom(event.target.value)} />
        </Field>
        <Field label="To" hint={sound ? undefined : 'Choose a last day that is not before the first'}>
          <input type="date" value={to} aria-invalid={!sound} onChange={(event) => setTo(event.target.value)} />
        </Field>
      </div>
      {sound && (
        <Answer query={tax}>
          {(view) => (
            <>
              <Reckoning view={view} />
              <Fold title={`Stock book (${view.stock_book.length})`}>
                <StockBookTable lines={view.stock_book} currency={view.currency} />
              </Fold>
              <p>
                <a className="button" href={`/api/books/pack?from=${from}&to=${to}`} download>
                  Save the books of this period
                </a>
              </p>
              <Why lines={view.why} summary="How this is reckoned" />
            </>
          )}
        </Answer>
      )}
      <Fold title="Rules in use">
        <TaxRuleForm currency={currency} rules={tax.data?.rules ?? []} />
      </Fold>
    </Section>
  );
}

function Reckoning({ view }: { readonly view: TaxView }) {
  const { each, together, small_trader: small, currency } = view;
  if (!each && !together && !small) return <p className="muted">No rule of tax is in use. Choose one below if it is open to you.</p>;
  return (
    <>
      {each && (
        <p>
          Margin scheme, thing by thing: tax of <strong>{money(each.tax_minor, currency)}</strong> on what was sold in this period.
        </p>
      )}
      {together && (
        <>
          <p>
            Margin scheme, all together: tax of <strong>{money(together.tax_minor, currency)}</strong>.
            {together.left_out > 0 && ` ${together.left_out} dearer than the limit are left out and go one by one.`}
          </p>
          <TogetherTable together={together} currency={currency} />
        </>
      )}
      {small && (
        <p>
          {money(small.income_minor, currency)} came in{small.within ? ', within' : ', above'} the allowance of{' '}
          {money(small.allowance_minor, currency)}.{' '}
          {small.within
            ? `${money(small.left_minor, currency)} are left of it.`
            : `With the allowance ${money(small.with_allowance_minor, currency)} would count, with the costs ${money(small.with_costs_minor, currency)}.`}
        </p>
      )}
    </>
  );
}

function TogetherTable({ together, currency }: { readonly together: NonNullable<TaxView['together']>; readonly currency: string }) {
  const months = together.months.filter((m) => m.sales_minor !== 0 || m.purchases_minor !== 0 || m.tax_minor !== 0);
  return (
    <TableScroll label="Margins by month">
      <thead>
        <tr>
          <th scope="col">Month</th>
          {['Sold', 'Bought', 'Margin', 'Carried on', 'Tax'].map((title) => (
            <th key={title} scope="col" className="num">
              {title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {months.map((m) => (
          <tr key={m.month}>
            <th scope="row">{monthName(m.month)}</th>
            {[m.sales_minor, m.purchases_minor, m.margin_minor, m.carried_forward_minor, m.tax_minor].map((minor, i) => (
              // oxlint-disable-next-line react/no-array-index-key -- five fixed columns
              <td key={i} className="num">
                {money(minor, currency)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </TableScroll>
  );
}
