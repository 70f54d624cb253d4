import type { BeliefView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';

const MOST_TOLD = 3;

/** What changed last, and by what. */
export function Moved({ moved }: { readonly moved: BeliefView['moved'] }) {
  if (moved === null) return null;
  return (
    <p className="moved">
      <b>{moved.text}</b>{' '}
      {moved.faults.length === 0
        ? 'moved nothing by much.'
        : `moved ${moved.faults
            .slice(0, MOST_TOLD)
            .map((fault) => `${fault.name} from ${chance(fault.before)} to ${chance(fault.chance)}`)
            .join(', ')}.`}
    </p>
  );
}
