import { Link } from 'wouter';
import type { LearnedView } from '../../../bench/views/index.ts';
import { resetLearned } from '../actions/set-learning.ts';
import { useLearned, useModels } from '../api/queries.ts';
import { day } from '../format/when.ts';
import { money } from '../format/money.ts';
import { chance, counted, duration } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { FadeForm } from './fade-form.tsx';
import { SharePart } from './share-part.tsx';

type Learned = LearnedView['numbers'][number];

const GROUPS: readonly { readonly about: Learned['about']; readonly title: string }[] = [
  { about: 'remedy-chance', title: 'How often a remedy mends' },
  { about: 'remedy-time', title: 'How long a remedy takes' },
  { about: 'fault-rate', title: 'How often a fault is met' },
  { about: 'honesty', title: 'What sellers say' },
  { about: 'price', title: 'What a working one sells for' },
  { about: 'price-for-parts', title: 'What a faulty one sells for' },
  { about: 'reference', title: 'What good boards show' },
  { about: 'noise', title: 'How far readings of good boards differ' },
];

/** A longer list is read by nobody. */
const MOST_JOBS = 50;

/** What the bench has learned, before and now, each number with the jobs behind it and a way to begin anew. */
export function LearnedSection() {
  const [learned, models] = [useLearned(), useModels()];
  return (
    <Section id="learned" title="What was learned">
      <Answer query={learned}>
        {(view) => (
          <>
            {view.numbers.length === 0 && (
              <p className="muted">Nothing yet: it begins with the first unit that leaves the bench, or the first sale that is known.</p>
            )}
            {GROUPS.map(({ about, title }) => (
              <Group key={about} title={title} numbers={view.numbers.filter((number) => number.about === about)} currency={view.currency} />
            ))}
            <SharePart models={(models.data ?? []).filter(({ id }) => learnedModels(view).has(id))} />
            <FadeForm halfLifeDays={view.half_life_days} />
          </>
        )}
      </Answer>
    </Section>
  );
}

function Group({ title, numbers, currency }: { readonly title: string; readonly numbers: readonly Learned[]; readonly currency: string }) {
  if (numbers.length === 0) return null;
  return (
    <Fold title={`${title} (${numbers.length})`}>
      <ul className="plain-list">
        {numbers.map((number) => (
          <li key={number.id}>
            <One number={number} currency={currency} />
          </li>
        ))}
      </ul>
    </Fold>
  );
}

function One({ number, currency }: { readonly number: Learned; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const say = (value: number): string => inUnit(value, number.unit, currency);
  return (
    <Fold
      title={`${number.name}: ${say(number.before)} before, ${say(number.mean)} now (nine in ten: ${say(number.low)} to ${say(number.high)})`}
    >
      <ul className="plain-list">
        {number.jobs.slice(-MOST_JOBS).map((job) => (
          <li key={`${job.event_id} ${job.item_id}`}>
            {job.item_id === null ? job.text : <Link href={`/bench/${encodeURIComponent(job.item_id)}`}>{job.text}</Link>} ({day(job.at)},
            counts {Math.round(100 * job.weight)} %)
          </li>
        ))}
      </ul>
      <p className="small muted">
        From {counted(number.jobs.length, 'job')}
        {number.jobs.length > MOST_JOBS && `, of which the last ${MOST_JOBS} are shown`}.
      </p>
      <button type="button" disabled={busy} onClick={() => void record(resetLearned(number.id, number.name))}>
        Begin anew<span className="sr-only">: {number.name}</span>
      </button>
    </Fold>
  );
}

function inUnit(value: number, unit: Learned['unit'], currency: string): string {
  if (unit === 'share') return chance(value);
  if (unit === 'min') return duration(value);
  return unit === 'minor' ? money(Math.round(value), currency) : `${Number(value.toPrecision(3))} ${unit}`;
}

/** Models with a number that may be given away. */
function learnedModels({ numbers }: LearnedView): ReadonlySet<string> {
  const shared = numbers.filter(({ about }) => about !== 'price' && about !== 'price-for-parts');
  return new Set(shared.flatMap(({ model_id: id }) => id ?? []));
}
