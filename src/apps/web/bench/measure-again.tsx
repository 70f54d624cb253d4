import type { BeliefView } from '../../../bench/views/index.ts';
import { usePoints } from '../api/queries.ts';
import { Fold } from '../ui/fold.tsx';
import { MeasureAnswerForm } from './measure-answer-form.tsx';
import { useUnit } from './unit-context.ts';

/** The reading that disagrees most with the rest, and the form to take it once more. */
export function MeasureAgain({ repeat }: { readonly repeat: NonNullable<BeliefView['repeat']> }) {
  const { file } = useUnit();
  const point = usePoints(file.model.id).data?.find(({ id }) => id === repeat.point);
  return (
    <div className="odd" role="note">
      <h3>This reading disagrees most</h3>
      <p>{repeat.text}</p>
      {point && (
        <Fold title={`Measure again: ${repeat.name}`}>
          <MeasureAnswerForm point={point} usualMinutes={1} />
        </Fold>
      )}
    </div>
  );
}
