import { duration } from '../format/number.ts';
import { startWatch, stopWatch, useStepMinutes } from './step-watch.ts';

/** Whether the time of each step is taken: what is taken is learned, and what is not leaves the model's word. */
export function StepWatch({ itemId }: { readonly itemId: string }) {
  const minutes = useStepMinutes(itemId);
  return (
    <div className="row-apart">
      <span className="small">{minutes === null ? 'The time of the steps is not taken.' : `On this step for ${duration(minutes)}`}</span>
      <button type="button" aria-pressed={minutes !== null} onClick={() => (minutes === null ? startWatch(itemId) : stopWatch())}>
        {minutes === null ? 'Take the time' : 'Do not take the time'}
      </button>
    </div>
  );
}
