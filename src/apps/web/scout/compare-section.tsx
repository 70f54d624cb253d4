import { useState } from 'react';
import type { BenchView, CompareQuestion, ModelRow } from '../../../bench/views/index.ts';
import { LISTING_COLUMNS, listingsFromCsv, listingToCompare } from '../../../bench/scout/index.ts';
import { useComparison } from '../api/queries.ts';
import { csvLines } from '../format/csv-lines.ts';
import { Answer } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { defaultModel, modelOptions } from '../ui/model-options.ts';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import { ComparedTable } from './compared-table.tsx';

interface CompareSectionProps {
  readonly bench: BenchView;
  readonly models: readonly ModelRow[];
}

/** Many listings in one table, ranked by what an hour at each would bring. Nothing is kept. */
export function CompareSection({ bench, models }: CompareSectionProps) {
  const [question, setQuestion] = useState<CompareQuestion | null>(null);
  return (
    <Section id="compare" title="Compare listings">
      <Fold title="Paste a table of listings" open={question === null}>
        <TableForm bench={bench} models={models} ask={setQuestion} />
      </Fold>
      {question && <Comparison question={question} />}
    </Section>
  );
}

function TableForm({ bench, models, ask }: CompareSectionProps & { readonly ask: (question: CompareQuestion) => void }) {
  const [text, setText] = useState('');
  const [modelId, setModel] = useState(() => defaultModel(models));
  const [problems, setProblems] = useState<readonly string[]>([]);
  const compare = (): void => {
    const { listings, problems: found } = listingsFromCsv(csvLines(text), bench.currency);
    const unknown = listings.filter((line) => line.modelId !== '' && !models.some(({ id }) => id === line.modelId));
    const said = [
      ...found.map(({ line, field, message, next }) => `Line ${line}, ${field} ${message}. ${next}`),
      ...unknown.map((line) => `"${line.title}": there is no model ${line.modelId}. Leave it out, or write one of the names under Models.`),
    ];
    setProblems(said);
    if (said.length === 0 && listings.length > 0) ask({ listings: listings.map((line) => listingToCompare(line, modelId)) });
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        compare();
      }}
    >
      <Field label="A table of listings" hint={`First line: ${LISTING_COLUMNS.join(',')}. Only the first two are needed.`}>
        <textarea value={text} required spellCheck={false} rows={5} onChange={(event) => setText(event.target.value)} />
      </Field>
      <div className="fields">
        <Field label="Or from a file">
          <input type="file" accept=".csv,text/csv,text/plain" onChange={(event) => void event.target.files?.[0]?.text().then(setText)} />
        </Field>
        <Pick label="What they are where a line does not say it" options={modelOptions(models)} value={modelId} onChange={setModel} />
      </div>
      {problems.length > 0 && (
        <div role="alert" className="trouble">
          <p>Nothing was compared. Mend these:</p>
          <ul>
            {problems.slice(0, 8).map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </div>
      )}
      <button type="submit">Compare them</button>
    </form>
  );
}

function Comparison({ question }: { readonly question: CompareQuestion }) {
  const compared = useComparison(question);
  return <Answer query={compared}>{(view) => <ComparedTable view={view} />}</Answer>;
}
