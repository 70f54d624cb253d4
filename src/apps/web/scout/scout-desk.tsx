import { useState } from 'react';
import type { BenchView, ModelRow } from '../../../bench/views/index.ts';
import { useOutlook } from '../api/queries.ts';
import { useSettled } from '../ui/use-settled.ts';
import { Trouble } from '../ui/answer.tsx';
import { BuySection } from './buy-section.tsx';
import { emptyListing, questionOf } from './listing-form.ts';
import { ListingFields } from './listing-fields.tsx';
import { LotCard } from './lot-card.tsx';
import { OutlookCard } from './outlook-card.tsx';
import { QuestionsCard } from './questions-card.tsx';

/** The listing at the left, what it is worth to this bench at the right, changing as one types. */
export function ScoutDesk({ bench, models }: { readonly bench: BenchView; readonly models: readonly ModelRow[] }) {
  const [form, setForm] = useState(() => emptyListing(bench, models));
  const question = questionOf(useSettled(form, 300));
  const outlook = useOutlook(question);
  const shown = question === null ? undefined : outlook.data;
  const startAnew = (): void => setForm(emptyListing(bench, models));
  return (
    <div className="scout">
      <ListingFields form={form} change={(part) => setForm((now) => ({ ...now, ...part }))} bench={bench} models={models} />
      <div className="scout-answer" aria-live="polite">
        {question === null && <p className="sheet">Give a price, and the outlook stands here.</p>}
        {outlook.isError && <Trouble error={outlook.error} retry={() => void outlook.refetch()} />}
        {shown && <OutlookCard outlook={shown} count={form.count} />}
        {shown && <LotCard form={form} />}
        {question !== null && <QuestionsCard question={question} />}
        {shown && <BuySection key={form.modelId} form={form} outlook={shown} done={startAnew} models={models} />}
      </div>
    </div>
  );
}
