import { useState } from 'react';
import { seeSales } from '../actions/see-sale.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { SALES_COLUMNS, salesFromCsv } from '../../../bench/market/sales-csv.ts';
import { csvLines } from '../format/csv-lines.ts';

/** Many sales at once, as a table from a file or the clipboard. */
export function SalesPaste({ modelId, currency }: { readonly modelId: string; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const [text, setText] = useState('');
  const [problems, setProblems] = useState<readonly string[]>([]);
  const add = async (): Promise<void> => {
    const { sales, problems: found } = salesFromCsv(csvLines(text), currency);
    setProblems(found.map(({ line, field, message, next }) => `Line ${line}, ${field}: ${message}. ${next}`));
    if (found.length > 0 || sales.length === 0) return;
    if (await record(seeSales(sales.map((line) => ({ ...line, saleId: newId('sale'), modelId }))))) setText('');
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <Field label="A table of sales" hint={`First line: ${SALES_COLUMNS.join(',')}. Only the first three are needed.`}>
        <textarea value={text} required spellCheck={false} rows={5} onChange={(event) => setText(event.target.value)} />
      </Field>
      <Field label="Or from a file">
        <input type="file" accept=".csv,text/csv,text/plain" onChange={(event) => void event.target.files?.[0]?.text().then(setText)} />
      </Field>
      {problems.length > 0 && (
        <div role="alert" className="trouble">
          <p>Nothing was added. Mend these and add it again:</p>
          <ul>
            {problems.slice(0, 8).map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </div>
      )}
      <button type="submit" disabled={busy}>
        Add the table
      </button>
    </form>
  );
}
