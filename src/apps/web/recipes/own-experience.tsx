import type { LearnedView } from '../../../bench/views/index.ts';
import { useLearned } from '../api/queries.ts';
import { chance, counted, duration } from '../format/number.ts';

type Learned = LearnedView['numbers'][number];

/** What this bench has learned of a remedy: how often it mends what it is for, and how long it takes, with limits and from how many jobs. */
export function OwnExperience({ modelId, remedyId }: { readonly modelId: string; readonly remedyId: string }) {
  const learned = useLearned();
  const numbers = learned.data?.numbers ?? [];
  const of = (about: Learned['about']): Learned | undefined => numbers.find(({ id }) => id === `${about}.${modelId}.${remedyId}`);
  const [mends, takes] = [of('remedy-chance'), of('remedy-time')];
  if (!mends && !takes) return <p className="small muted">No job of yours with this remedy yet: its numbers are those of the model.</p>;
  return (
    <p className="small">
      {mends && (
        <>
          Mends what it is for: {chance(mends.mean)} ({chance(mends.low)} to {chance(mends.high)}; as shipped {chance(mends.before)}, and{' '}
          {counted(mends.jobs.length, 'job')} of yours).{' '}
        </>
      )}
      {takes && (
        <>
          Takes {duration(takes.mean)} ({duration(takes.low)} to {duration(takes.high)}; as shipped {duration(takes.before)}, and{' '}
          {counted(takes.jobs.length, 'job')} of yours).
        </>
      )}
    </p>
  );
}
